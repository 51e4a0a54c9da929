import { useComputed, useSignal } from '@preact/signals';
import type { Painting } from '../../core/decisions/painting.ts';
import { describeFault } from '../../state/describe-fault.ts';
import type { OpenedReading } from '../../state/painting/opened-reading.ts';
import type { Studio } from '../../state/painting/studio.ts';
import { Button } from '../../ui/controls/button.tsx';
import { ChoiceRow } from '../../ui/controls/choice-row.tsx';
import { ValueScale } from '../../ui/controls/value-scale.tsx';
import { WorkLine } from '../../ui/layout/waiting.tsx';
import { studyEdges } from '../../ui/picture/use-soft.ts';
import { EdgeFacts } from '../edges/edge-facts.tsx';
import type { SpotColours } from './spot-colours.ts';
import { StudyFacts } from './study-facts.tsx';
import styles from './study-panel.module.css';
import { chooseView, type Look, type LookView } from './use-look.ts';
import { loadedTools, type ToolsState } from './use-study-tools.ts';

interface StudyPanelProps {
  studio: Studio;
  paintingId: string;
  look: Look;
  tools: ToolsState;
  spots: readonly SpotColours[];
  onSmallStudy?: ((painting: Painting) => Promise<void>) | undefined;
}

type View = readonly [LookView, string];

/** Under the picture: what is shown, the ways to look, then the values and all that was seen. */
export function StudyPanel(props: StudyPanelProps) {
  const { studio, paintingId, look, tools, spots, onSmallStudy } = props;
  const seen = studio.seen.value;
  const painting = studio.painting.value;
  const kit = loadedTools(tools);
  const squints = useComputed(() => look.view.value === 'squint');
  const atEdges = useComputed(() => look.view.value === 'edges');
  const views: View[] = [
    ['grey', 'Grey'],
    ['colour', 'Colour'],
  ];
  if (seen) views.push(['values', 'Few values']);
  if (kit) views.push(['squint', 'Squint']);
  if (seen?.reading.edges?.length) views.push(['edges', 'Edges']);
  const again = (): void => {
    look.marks.value = [];
    look.moving.value = null;
  };
  return (
    <div class={styles.panel}>
      <ViewChoice look={look} views={views} />
      {kit && <kit.ToolRow look={look} canTouch={seen !== null} />}
      {kit && seen && look.touching.value ? (
        <kit.SpotCard reading={seen.reading} spots={spots} onAgain={again} />
      ) : (
        <>
          {kit && squints.value && <kit.SquintStrength strength={look.squint} />}
          {seen && atEdges.value && <EdgeFacts edges={studyEdges(studio)} />}
          {seen && <Values studio={studio} look={look} tools={tools} seen={seen} />}
        </>
      )}
      {(!seen || studio.problem.value) && <WorkLine studio={studio} />}
      {seen && !look.touching.value && (
        <StudyFacts studio={studio} paintingId={paintingId} seen={seen} tools={tools} />
      )}
      {seen && !look.touching.value && painting && onSmallStudy && !painting.studyOf && (
        <SmallStudyOffer onMake={() => onSmallStudy(painting)} />
      )}
    </div>
  );
}

function ViewChoice({ look, views }: { look: Look; views: readonly View[] }) {
  return (
    <ChoiceRow
      label="What the picture shows"
      choices={views}
      chosen={look.only.value === null ? look.view.value : null}
      onChoose={(view) => chooseView(look, view)}
    />
  );
}

interface ValuesProps extends Omit<StudyPanelProps, 'spots' | 'paintingId' | 'onSmallStudy'> {
  seen: OpenedReading;
}

function Values({ studio, look, tools, seen }: ValuesProps) {
  const { only, limits } = look;
  const onBand = (band: number): void => {
    only.value = only.value === band ? null : band;
  };
  if (typeof tools !== 'object')
    return (
      <ValueScale
        bands={seen.reading.bands}
        current={new Set(only.value === null ? [] : [only.value])}
        onBand={onBand}
      />
    );
  return (
    <tools.ValueStrip
      reading={seen.reading}
      moved={limits.value}
      only={only.value}
      onBand={onBand}
      onMove={(moved) => {
        if (moved) chooseView(look, 'values');
        limits.value = moved;
      }}
      onSettle={(lightness) => {
        limits.value = lightness;
        void studio.decide({ kind: 'limits', lightness });
      }}
    />
  );
}

/** A small study before the painting: what it is, and the way to it. */
function SmallStudyOffer({ onMake }: { onMake: () => Promise<void> }) {
  const busy = useSignal(false);
  const problem = useSignal<string | null>(null);
  const make = async (): Promise<void> => {
    busy.value = true;
    problem.value = null;
    try {
      await onMake();
    } catch (fault) {
      problem.value = describeFault(fault);
    } finally {
      busy.value = false;
    }
  };
  return (
    <section class={styles.offer} aria-label="Small study">
      <Button disabled={busy.value} onClick={() => void make()}>
        Small study first
      </Button>
      <p class={styles.words}>
        The same picture on a postcard: one dark paint, three values. About 20 minutes’ work, and
        the drying between. It is a painting of its own; this one stays as it is.
      </p>
      {problem.value && <p role="alert">{problem.value}</p>}
    </section>
  );
}
