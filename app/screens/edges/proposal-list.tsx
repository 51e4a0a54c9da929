import type { EdgeProposal, EdgeProposals } from '../../model/edge-proposals.ts';
import { placeInWords } from '../../model/place-in-words.ts';
import { alongEdge } from '../../model/place-on-edge.ts';
import type { Reading } from '../../model/reading.ts';
import { Button } from '../common/button.tsx';
import styles from './proposal-list.module.css';
import { wishNames } from './wish-names.ts';

interface ProposalListProps {
  proposals: EdgeProposals;
  reading: Reading;
  /** Index of the edge in hand. */
  chosen: number | null;
  hasFocus: boolean;
  onShow: (edge: number) => void;
  onAccept: (proposals: readonly EdgeProposal[]) => void;
  /** It stays as it was measured, and is not proposed again. */
  onLeave: (edge: number) => void;
}

/** Edges proposed to soften, lose or sharpen, each with its reason. */
export function ProposalList(props: ProposalListProps) {
  const { proposals, reading, chosen, hasFocus, onShow, onAccept, onLeave } = props;
  const { first, lens, list } = proposals;
  const whereOf = (index: number): string => {
    const edge = reading.edges?.[index];
    return edge ? placeInWords(alongEdge(edge, 0.5, reading.raster)) : '';
  };
  return (
    <section class={styles.proposals} aria-label="Proposed">
      <h2 class={styles.heading}>Proposed</h2>
      {first && <p data-testid="ask-for-focus">{first}</p>}
      {lens && <p>{lens}</p>}
      {list.length === 0 && hasFocus && (
        <p>
          Nothing more: what lies away from your centre of interest is quiet enough, or decided.
        </p>
      )}
      {list.length > 1 && (
        <Button wide onClick={() => onAccept(list)}>
          Accept all {list.length}
        </Button>
      )}
      <ol class={styles.list}>
        {list.map((proposal) => {
          const name = wishNames[proposal.wish];
          const where = whereOf(proposal.edge);
          return (
            <li key={proposal.edge} class={styles.proposal} data-chosen={proposal.edge === chosen}>
              <button type="button" class={styles.show} onClick={() => onShow(proposal.edge)}>
                <strong>
                  {name}, {where}
                </strong>
                <span class={styles.why}>{proposal.why}</span>
              </button>
              <div class={styles.answers}>
                <Button aria-label={`${name} it, ${where}`} onClick={() => onAccept([proposal])}>
                  {name} it
                </Button>
                <Button aria-label={`Leave it, ${where}`} onClick={() => onLeave(proposal.edge)}>
                  Leave it
                </Button>
              </div>
            </li>
          );
        })}
      </ol>
    </section>
  );
}
