import { useMemo } from 'preact/hooks';
import type { EdgeProposal, EdgeProposals } from '../../core/decisions/edge-proposals.ts';
import { type Edge, type EdgeWish, edgeWishes } from '../../core/reading/edges/edge.ts';
import { alongEdge } from '../../core/reading/edges/place-on-edge.ts';
import { stretchesOf } from '../../core/reading/edges/whole-edges.ts';
import type { Reading } from '../../core/reading/reading.ts';
import { edgeWhyInWords, lensInWords } from '../../core/words/decisions/edge-proposals.ts';
import { placeInWords } from '../../core/words/places.ts';
import { edgeSentences, wishCaution } from '../../core/words/reading/edge-words.ts';
import { Button } from '../../ui/controls/button.tsx';
import { SmallPicture } from '../../ui/picture/small-picture.tsx';
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

/** One whole edge: what was measured, in words, and what is to become of it. */
export function EdgeCard({ edge, reading, proposal, onWish }: EdgeCardProps) {
  const [kind, ...facts] = edgeSentences(edge, reading);
  const caution = edge.wish ? wishCaution(edge, edge.wish) : '';
  return (
    <section class="stack" aria-label="The edge you touched" data-testid="edge-card">
      <p class={styles.kind}>{kind}</p>
      <p class={styles.facts}>{facts.join(' ')}</p>
      {proposal && !edge.wish && (
        <p class={styles.facts}>
          Suggested: <strong>{wishNames[proposal.wish].toLowerCase()}</strong>.{' '}
          {edgeWhyInWords(proposal)}
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
      {edge.wish && <Button onClick={() => onWish(null)}>Take back</Button>}
    </section>
  );
}

interface ProposalListProps {
  proposals: EdgeProposals;
  reading: Reading;
  /** The picture each is shown a part of. */
  bitmap: ImageBitmap;
  /** See `wholeEdges`. */
  wholes: Int32Array;
  /** Index of the stretch she touched. */
  chosen: number | null;
  onShow: (edge: number) => void;
  onAccept: (proposals: readonly EdgeProposal[]) => void;
  /** It stays as it was measured, and is not proposed again. */
  onLeave: (edge: number) => void;
}

/** The few edges proposed to soften, lose or sharpen, each with a small picture of it and its reason. */
export function ProposalList(props: ProposalListProps) {
  const { proposals, reading, bitmap, wholes, chosen, onShow, onAccept, onLeave } = props;
  const { lens, list } = proposals;
  const lines = useMemo(() => linesOf(reading.edges ?? [], list, wholes), [reading, list, wholes]);
  const whereOf = (index: number): string => {
    const edge = reading.edges?.[index];
    return edge ? placeInWords(alongEdge(edge, 0.5, reading.raster)) : '';
  };
  return (
    <section class="stack" aria-label="Proposed">
      <h2 class={styles.heading}>Suggested</h2>
      {lens > 0 && <p>{lensInWords(lens)}</p>}
      {list.length === 0 && (
        <p>Nothing more: away from your centre of interest all is quiet enough, or decided.</p>
      )}
      {list.length > 1 && (
        <Button wide onClick={() => onAccept(list)}>
          Accept all {list.length}
        </Button>
      )}
      <ol class={styles.list}>
        {list.map((proposal, i) => {
          const name = wishNames[proposal.wish];
          const where = whereOf(proposal.edge);
          return (
            <li
              key={proposal.edge}
              class={styles.proposal}
              data-chosen={chosen !== null && wholes[proposal.edge] === wholes[chosen]}
            >
              <button type="button" class={styles.show} onClick={() => onShow(proposal.edge)}>
                <SmallPicture bitmap={bitmap} lines={lines[i] ?? []} />
                <span class={styles.words}>
                  <strong>
                    {name}, {where}
                  </strong>
                  <span class={styles.why}>{edgeWhyInWords(proposal)}</span>
                </span>
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

/** The course of every proposed edge, all its stretches. */
const linesOf = (
  edges: readonly Edge[],
  list: readonly EdgeProposal[],
  wholes: Int32Array,
): Edge['path'][][] =>
  list.map(({ edge }) =>
    stretchesOf(wholes, edge).flatMap((i) => (edges[i] ? [edges[i].path] : [])),
  );

/** What the four choices are called on screen. */
const wishNames: Readonly<Record<EdgeWish, string>> = {
  keep: 'Keep',
  soften: 'Soften',
  lose: 'Lose',
  sharpen: 'Sharpen',
};
