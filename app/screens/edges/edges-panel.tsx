import { useEffect, useRef } from 'preact/hooks';
import type { NewDecision } from '../../core/decisions/painting.ts';
import type { Edge, EdgeWish } from '../../core/reading/edges/edge.ts';
import { placeOnEdge } from '../../core/reading/edges/place-on-edge.ts';
import { joinStretches } from '../../core/reading/edges/whole-edges.ts';
import { firstWords } from '../../core/words/decisions/edge-proposals.ts';
import { warningInWords } from '../../core/words/reading/warnings.ts';
import { decidedMark } from '../../drawing/line-layers.ts';
import type { Studio } from '../../state/painting/studio.ts';
import { Button } from '../../ui/controls/button.tsx';
import { ChoiceRow } from '../../ui/controls/choice-row.tsx';
import type { DecisionContext } from '../../ui/layout/decision-screen.tsx';
import { Fold } from '../../ui/layout/fold.tsx';
import { EdgeCard, ProposalList } from './edge-card.tsx';
import { EdgeFacts } from './edge-facts.tsx';
import styles from './edges-panel.module.css';
import { type EdgesState, edgeDecision } from './use-edges.ts';

interface EdgesPanelProps {
  studio: Studio;
  context: DecisionContext;
  state: EdgesState;
}

function describeTouch({ mode, missed, focus, index }: EdgesState): string {
  if (mode.value === 'focus') {
    return focus.value ? 'The eye rests here. Touch another place to move it.' : '';
  }
  if (missed.value) return 'There is no edge near that place. Touch one of the lines.';
  return index.value === null
    ? 'Touch an edge to see what it is and to choose what to do with it.'
    : '';
}

/** Beside the picture: what a touch does, the edge in hand, what is proposed, and all edges by length. */
export function EdgesPanel({ studio, context, state }: EdgesPanelProps) {
  const { painting } = context;
  const { mode, asked, view, chosen, missed, focus, inHand } = state;
  const top = useRef<HTMLDivElement>(null);
  const index = state.index.value;
  const reading = state.decided.value;
  const proposals = state.proposals.value;
  // What was just touched is told at the top of what scrolls.
  useEffect(() => {
    if (chosen.value || missed.value) top.current?.parentElement?.scrollTo(0, 0);
  }, [chosen.value, missed.value]);
  if (!reading || !proposals) return null;
  const edges = reading.edges ?? [];
  const touched = index === null ? undefined : edges[index];
  const edge = touched && wholeInHand(inHand.value, touched.wish);
  const asksFirst = !focus.value && mode.value === 'focus';

  const wish = (edgeIndex: number, next: EdgeWish | null): NewDecision | null =>
    edgeDecision(
      painting,
      reading,
      edgeIndex,
      next,
      (edgeIndex === index && chosen.value) || undefined,
    );
  const decide = async (all: readonly (NewDecision | null)[]): Promise<void> => {
    const decisions = all.filter((one) => one !== null);
    // Worked out once, after the last.
    for (const [i, one] of decisions.entries())
      await (i < decisions.length - 1 ? studio.note(one) : studio.decide(one));
  };
  const stiff = reading.warnings.find(({ code }) => code === 'all-hard');
  const sentence = describeTouch(state);

  return (
    <div class={styles.panel} ref={top}>
      {asksFirst && edges.length > 0 && (
        <>
          <p class={styles.sentence} role="status" data-testid="ask-for-focus">
            {proposals.first && firstWords[proposals.first]}
          </p>
          <Button
            onClick={() => {
              asked.value = 'edge';
            }}
          >
            Look at the edges first
          </Button>
        </>
      )}
      {!asksFirst && (
        <ChoiceRow
          label="What a touch does"
          choices={[
            ['edge', 'Touch an edge'],
            ['focus', 'Centre of interest'],
          ]}
          chosen={mode.value}
          onChoose={(next) => {
            asked.value = next;
            chosen.value = null;
            missed.value = false;
          }}
        />
      )}
      <p class={styles.sentence} role="status" data-testid="edges-sentence">
        {sentence}
      </p>
      {edge && (
        <EdgeCard
          edge={edge}
          reading={reading}
          proposal={proposals.list.find(({ edge: stretch }) =>
            inHand.value.includes(edges[stretch] as Edge),
          )}
          onWish={(next) => void decide([wish(index as number, next)])}
        />
      )}
      {mode.value === 'focus' && focus.value && (
        <Button look="quiet" onClick={() => void decide([{ kind: 'focus', place: null }])}>
          No centre of interest
        </Button>
      )}
      {stiff && focus.value && <p data-testid="all-hard">{warningInWords(stiff)}</p>}
      {edges.length === 0 ? (
        <p>No edges were found in this picture: it is all one tone.</p>
      ) : (
        focus.value && (
          <ProposalList
            proposals={proposals}
            reading={reading}
            bitmap={context.pictures.reference}
            wholes={state.wholes.value}
            chosen={index}
            onShow={(edgeIndex) => {
              missed.value = false;
              asked.value = 'edge';
              chosen.value = placeOnEdge(edges, edgeIndex, reading.raster);
            }}
            onAccept={(list) => {
              void decide(list.map((one) => wish(one.edge, one.wish)));
              if (list.length > 1) chosen.value = null;
            }}
            onLeave={(edgeIndex) => void decide([wish(edgeIndex, 'keep')])}
          />
        )
      )}
      <ChoiceRow
        label="What lies under the edges"
        choices={[
          ['grey', 'On grey'],
          ['colour', 'On colour'],
        ]}
        chosen={view.value}
        onChoose={(next) => {
          view.value = next;
        }}
      />
      <Fold title="What the lines mean">
        <EdgeFacts edges={edges} />
        <EdgeLegend />
      </Fold>
    </div>
  );
}

/** The whole edge in hand, with what she decided of the stretch she touched. */
function wholeInHand(stretches: readonly Edge[], wish: EdgeWish | undefined): Edge {
  const { wish: _, ...edge } = joinStretches(stretches);
  return wish ? { ...edge, wish } : edge;
}

const flags: readonly (readonly [name: string, meaning: string])[] = [
  ['Graded', 'so wide that it is a graded wash, no edge'],
  ['Held by colour', 'same value, different colour'],
  ['Out of focus', 'the lens may have made it soft'],
];

/** What else is told of edges: graded, held by colour, out of focus, and decided by her. */
function EdgeLegend() {
  return (
    <dl class={styles.legend}>
      {flags.map(([name, meaning]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{meaning}</dd>
        </div>
      ))}
      <div>
        <dt>
          <svg class={styles.sample} viewBox="0 0 44 18" aria-hidden="true">
            <path
              d={`M4 9H40M22 ${9 - decidedMark.length * 450}V${9 + decidedMark.length * 450}`}
              stroke="currentColor"
              stroke-width="2.5"
            />
          </svg>{' '}
          Yours
        </dt>
        <dd>a stroke across it: you decided</dd>
      </div>
    </dl>
  );
}
