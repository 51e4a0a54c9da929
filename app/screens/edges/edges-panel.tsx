import { useEffect, useRef } from 'preact/hooks';
import type { NewDecision } from '../../core/decisions/painting.ts';
import type { Edge, EdgeWish } from '../../core/reading/edges/edge.ts';
import { placeOnEdge } from '../../core/reading/edges/place-on-edge.ts';
import { lengthInWords } from '../../core/words/numbers.ts';
import { decidedMark } from '../../drawing/line-layers.ts';
import type { Studio } from '../../state/painting/studio.ts';
import { Button } from '../../ui/controls/button.tsx';
import { ChoiceRow } from '../../ui/controls/choice-row.tsx';
import type { DecisionContext } from '../../ui/layout/decision-screen.tsx';
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
    return focus.value
      ? 'The eye should rest here. Touch another place to move it.'
      : 'Touch the place where the eye should rest.';
  }
  if (missed.value) return 'There is no edge near that place. Touch one of the lines.';
  return index.value === null
    ? 'Touch an edge to see what it is and to decide what becomes of it.'
    : '';
}

/** Beside the picture: what a touch does, the edge in hand, what is proposed, and all edges by length. */
export function EdgesPanel({ studio, context, state }: EdgesPanelProps) {
  const { painting } = context;
  const { mode, view, chosen, missed, focus } = state;
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
  const edge = index === null ? undefined : edges[index];

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
      <ChoiceRow
        label="What a touch does"
        choices={[
          ['edge', 'Touch an edge'],
          ['focus', 'Centre of interest'],
        ]}
        chosen={mode.value}
        onChoose={(next) => {
          mode.value = next;
          chosen.value = null;
          missed.value = false;
        }}
      />
      <p class={styles.sentence} role="status" data-testid="edges-sentence">
        {sentence}
      </p>
      {edge && (
        <EdgeCard
          edge={edge}
          reading={reading}
          proposal={proposals.list.find((one) => one.edge === index)}
          onWish={(next) => void decide([wish(index as number, next)])}
        />
      )}
      {mode.value === 'focus' && focus.value && (
        <Button look="quiet" onClick={() => void decide([{ kind: 'focus', place: null }])}>
          No centre of interest
        </Button>
      )}
      {stiff && focus.value && <p data-testid="all-hard">{stiff.text}</p>}
      {edges.length === 0 ? (
        <p>No edges were found in this picture: it is all one tone.</p>
      ) : (
        <ProposalList
          proposals={proposals}
          reading={reading}
          chosen={index}
          hasFocus={focus.value !== null}
          onShow={(edgeIndex) => {
            missed.value = false;
            mode.value = 'edge';
            chosen.value = placeOnEdge(edges, edgeIndex, reading.raster);
          }}
          onAccept={(list) => {
            void decide(list.map((one) => wish(one.edge, one.wish)));
            if (list.length > 1) chosen.value = null;
          }}
          onLeave={(edgeIndex) => void decide([wish(edgeIndex, 'keep')])}
        />
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
      <EdgeFacts edges={edges} />
      <EdgeLegend edges={edges} />
    </div>
  );
}

const flags: readonly (readonly [
  flag: 'graded' | 'heldByColour' | 'outOfFocus',
  name: string,
  meaning: string,
])[] = [
  ['graded', 'Graded', 'so wide that it is a graded wash, no edge'],
  ['heldByColour', 'Held by colour', 'lost in value, the hues still part it'],
  ['outOfFocus', 'Out of focus', 'the lens may have made it soft'],
];

/** What else is told of edges: how much is graded, held by colour, out of focus, and decided by her. */
function EdgeLegend({ edges }: { edges: readonly Edge[] }) {
  const lengthOf = (isCounted: (edge: Edge) => boolean): string => {
    const own = edges.filter(isCounted).reduce((sum, { lengthMm }) => sum + lengthMm, 0);
    return own > 0 ? lengthInWords(own) : 'none';
  };
  return (
    <dl class={styles.legend}>
      {flags.map(([flag, name, meaning]) => (
        <div key={flag}>
          <dt>{name}</dt>
          <dd>
            {meaning}: {lengthOf((edge) => edge[flag])}
          </dd>
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
        <dd>a stroke across: you decided it: {lengthOf(({ wish }) => wish !== undefined)}</dd>
      </div>
    </dl>
  );
}
