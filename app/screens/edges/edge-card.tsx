import type { EdgeProposal, EdgeProposals } from '../../core/decisions/edge-proposals.ts';
import { placeInWords } from '../../core/raster/size.ts';
import { type Edge, type EdgeWish, edgeWishes } from '../../core/reading/edges/edge.ts';
import { edgeSentences, wishCaution } from '../../core/reading/edges/edge-words.ts';
import { alongEdge } from '../../core/reading/edges/place-on-edge.ts';
import type { Reading } from '../../core/reading/reading.ts';
import { Button } from '../../ui/controls/button.tsx';
import styles from './edge-card.module.css';

interface EdgeCardProps {
  edge: Edge;
  reading: Reading;
  proposal: EdgeProposal | undefined;
  /** null takes her decision back. */
  onWish: (wish: EdgeWish | null) => void;
}

const meaning: Readonly<Record<EdgeWish, string>> = {
  keep: 'as it is in the photo',
  soften: 'a barely damp brush while it shines',
  lose: 'both sides in one wash',
  sharpen: 'one clear stroke on dry paper',
};

/** One edge: what was measured, in words, and what is to become of it. */
export function EdgeCard({ edge, reading, proposal, onWish }: EdgeCardProps) {
  const [kind, ...facts] = edgeSentences(edge, reading);
  const caution = edge.wish ? wishCaution(edge, edge.wish) : '';
  return (
    <section class="stack" aria-label="The edge you touched" data-testid="edge-card">
      <p class={styles.kind}>{kind}</p>
      <p class={styles.facts}>{facts.join(' ')}</p>
      {proposal && !edge.wish && (
        <p class={styles.facts}>
          Proposed: <strong>{wishNames[proposal.wish].toLowerCase()}</strong>. {proposal.why}
        </p>
      )}
      <fieldset class={styles.choices}>
        <legend class="spoken">What becomes of it</legend>
        {edgeWishes.map((wish) => (
          <button
            key={wish}
            type="button"
            class={styles.choice}
            aria-pressed={edge.wish === wish}
            onClick={() => edge.wish !== wish && onWish(wish)}
          >
            <span class={styles.name}>{wishNames[wish]}</span>
            <span class={styles.meaning}>{meaning[wish]}</span>
          </button>
        ))}
      </fieldset>
      {caution && <p role="status">{caution}</p>}
      {edge.wish && <Button onClick={() => onWish(null)}>Take back: as it was measured</Button>}
    </section>
  );
}

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
    <section class="stack" aria-label="Proposed">
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

/** What the four choices are called on screen. */
const wishNames: Readonly<Record<EdgeWish, string>> = {
  keep: 'Keep',
  soften: 'Soften',
  lose: 'Lose',
  sharpen: 'Sharpen',
};
