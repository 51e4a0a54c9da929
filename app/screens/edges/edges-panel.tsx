import { useEffect, useRef } from 'preact/hooks';
import type { EdgeWish } from '../../model/edge-wishes.ts';
import type { NewDecision } from '../../model/painting.ts';
import { placeOnEdge } from '../../model/place-on-edge.ts';
import type { Studio } from '../../state/studio.ts';
import { Button } from '../common/button.tsx';
import { ChoiceRow } from '../common/choice-row.tsx';
import type { Decided } from '../common/decide-place.tsx';
import { EdgeFacts } from '../common/edge-facts.tsx';
import { EdgeCard } from './edge-card.tsx';
import { edgeDecision } from './edge-decision.ts';
import { EdgeLegend } from './edge-legend.tsx';
import styles from './edges-panel.module.css';
import { ProposalList } from './proposal-list.tsx';
import type { EdgesState } from './use-edges.ts';

interface EdgesPanelProps {
  studio: Studio;
  now: Decided;
  state: EdgesState;
}

function said({ mode, missed, focus, index }: EdgesState): string {
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
export function EdgesPanel({ studio, now, state }: EdgesPanelProps) {
  const { painting } = now;
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

  const wish = (of: number, next: EdgeWish | null): NewDecision | null =>
    edgeDecision(painting, reading, of, next, (of === index && chosen.value) || undefined);
  const decide = async (all: readonly (NewDecision | null)[]): Promise<void> => {
    const decisions = all.filter((one) => one !== null);
    // Worked out once, after the last.
    for (const [i, one] of decisions.entries())
      await (i < decisions.length - 1 ? studio.note(one) : studio.decide(one));
  };
  const stiff = reading.warnings.find(({ code }) => code === 'all-hard');
  const sentence = said(state);

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
          onShow={(of) => {
            missed.value = false;
            mode.value = 'edge';
            chosen.value = placeOnEdge(edges, of, reading.raster);
          }}
          onAccept={(list) => {
            void decide(list.map((one) => wish(one.edge, one.wish)));
            if (list.length > 1) chosen.value = null;
          }}
          onLeave={(of) => void decide([wish(of, 'keep')])}
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
