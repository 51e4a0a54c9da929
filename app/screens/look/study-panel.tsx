import { type Signal, useComputed, useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import type { Painting } from '../../core/decisions/painting.ts';
import { studySentence } from '../../core/words/reading/study.ts';
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
  /** Whether the panel is pulled up. */
  isUp: Signal<boolean>;
  onSmallStudy?: ((painting: Painting) => Promise<void>) | undefined;
}

const views: readonly (readonly [LookView, string])[] = [
  ['grey', 'Grey'],
  ['colour', 'Colour'],
  ['values', 'Few values'],
  ['squint', 'Squint'],
  ['edges', 'Edges'],
];

/** Under the picture: what is shown, the ways to look, then the values and all that was seen. */
export function StudyPanel(props: StudyPanelProps) {
  const { studio, paintingId, look, tools, spots, isUp, onSmallStudy } = props;
  const seen = studio.seen.value;
  const painting = studio.painting.value;
  const kit = loadedTools(tools);
  const squints = useComputed(() => look.view.value === 'squint');
  const atEdges = useComputed(() => look.view.value === 'edges');
  const pictures = studio.pictures.value;
  // All of them from the first moment, so that nothing moves when the study arrives.
  const waiting: LookView[] = [];
  if (!pictures) waiting.push('grey', 'colour');
  if (!seen) waiting.push('values');
  if (!kit || !pictures) waiting.push('squint');
  if (!seen?.reading.edges?.length) waiting.push('edges');
  const again = (): void => {
    look.marks.value = [];
    look.moving.value = null;
  };
  return (
    <div class={styles.panel}>
      <PullRow isUp={isUp} said={pictures ? (seen ? studySentence(seen.reading) : null) : ''}>
        {(!seen || studio.problem.value) && pictures && <WorkLine studio={studio} />}
      </PullRow>
      <ViewChoice look={look} waiting={waiting} />
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
      {seen && !look.touching.value && (
        <StudyFacts studio={studio} paintingId={paintingId} seen={seen} tools={tools} />
      )}
      {seen && !look.touching.value && painting && onSmallStudy && !painting.studyOf && (
        <SmallStudyOffer onMake={() => onSmallStudy(painting)} />
      )}
    </div>
  );
}

interface PullRowProps {
  isUp: Signal<boolean>;
  /** The one sentence that matters most; null until it is known. */
  said: string | null;
  /** What is being done until then. */
  children: ComponentChildren;
}

/** The top of the panel: what matters most, and the way up to all else and down again. */
function PullRow({ isUp, said, children }: PullRowProps) {
  const up = isUp.value;
  return (
    <div class={styles.pull}>
      <div class={styles.said} data-up={up || undefined}>
        {children}
        {said && <p data-testid="sentence">{said}</p>}
      </div>
      <Button
        look="quiet"
        aria-expanded={up}
        onClick={(event) => {
          isUp.value = !up;
          if (up) event.currentTarget.closest('section')?.scrollTo(0, 0);
        }}
      >
        {up ? 'Less' : 'More'}
      </Button>
    </div>
  );
}

function ViewChoice({ look, waiting }: { look: Look; waiting: readonly LookView[] }) {
  return (
    <ChoiceRow
      label="What the picture shows"
      choices={views}
      waiting={waiting}
      chosen={look.only.value === null ? look.view.value : null}
      onChoose={(view) => chooseView(look, view)}
    />
  );
}

interface ValuesProps extends Pick<StudyPanelProps, 'studio' | 'look' | 'tools'> {
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
        The same picture on a postcard: one dark paint, three values. About 20 minutes, plus drying.
        It is saved separately.
      </p>
      {problem.value && <p role="alert">{problem.value}</p>}
    </section>
  );
}
