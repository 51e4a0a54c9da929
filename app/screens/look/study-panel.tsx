import { useComputed } from '@preact/signals';
import type { SpotColours } from '../../drawing/spot-colours.ts';
import type { Painting } from '../../model/painting.ts';
import type { Seen } from '../../state/seen.ts';
import type { Studio } from '../../state/studio.ts';
import { ChoiceRow } from '../common/choice-row.tsx';
import { EdgeFacts } from '../common/edge-facts.tsx';
import { studyEdges } from '../common/study-edges.ts';
import { ValueScale } from '../common/value-scale.tsx';
import { WorkLine } from '../common/waiting.tsx';
import styles from './look-screen.module.css';
import { SmallStudyOffer } from './small-study-offer.tsx';
import { StudyFacts } from './study-facts.tsx';
import { chooseView, type Look, type LookView } from './use-look.ts';
import { kitOf, type ToolsState } from './use-study-tools.ts';

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
  const kit = kitOf(tools);
  const squints = useComputed(() => look.view.value === 'squint');
  const atEdges = useComputed(() => look.view.value === 'edges');
  const views: View[] = [
    ['grey', 'Grey'],
    ['colour', 'Colour'],
  ];
  if (seen) views.push(['values', 'Values']);
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
  seen: Seen;
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
