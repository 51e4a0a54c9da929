import { type ReadonlySignal, useComputed, useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Pictures } from '../../../workers/api.ts';
import type { Painting } from '../../core/decisions/painting.ts';
import { computePxPerMm } from '../../core/raster/size.ts';
import { formatNames } from '../../core/words/reference/sheet.ts';
import type { Layer } from '../../drawing/layers.ts';
import { edgeLayer, paled } from '../../drawing/line-layers.ts';
import type { Studio } from '../../state/painting/studio.ts';
import { linkTo } from '../../state/router.ts';
import type { ToldOnce } from '../../state/told-once.ts';
import { Button, buttonClass } from '../../ui/controls/button.tsx';
import { ScreenLayout, TopBar } from '../../ui/layout/screen-layout.tsx';
import { Waiting } from '../../ui/layout/waiting.tsx';
import { Picture } from '../../ui/picture/picture.tsx';
import { pictureLayers, singleBandLayer, valuesLayer } from '../../ui/picture/picture-layers.ts';
import { studyEdges } from '../../ui/picture/use-soft.ts';
import styles from './look-screen.module.css';
import type { SpotColours } from './spot-colours.ts';
import { StudyPanel } from './study-panel.tsx';
import {
  type Look,
  layerAfterTap,
  shownLayer,
  showsGrey,
  toggleGrey,
  useLook,
} from './use-look.ts';
import { loadedTools, type ToolsState, useStudyTools } from './use-study-tools.ts';

interface LookScreenProps {
  studio: Studio;
  paintingId: string;
  /** Left out: nothing is told over the picture. */
  toldOnce?: ToldOnce;
  /** Left out: no small study is offered. */
  onSmallStudy?: (painting: Painting) => Promise<void>;
}

/** The value study: the reference in grey first, then its few values, whites and colours. */
export function LookScreen({ studio, paintingId, toldOnce, onSmallStudy }: LookScreenProps) {
  const look = useLook();
  const tools = useStudyTools();
  const isUp = useSignal(false);
  const spots = useSpots(studio, look, tools);
  const seen = studio.seen.value;
  const pictures = studio.pictures.value;
  const problem = studio.problem.value;
  // Her limits stand until the reading has followed, or could not.
  useEffect(() => {
    look.limits.value = null;
  }, [seen]);
  useEffect(() => {
    if (problem) look.limits.value = null;
  }, [problem]);

  return (
    <ScreenLayout
      name="look"
      top={
        <TopBar title="Value study" back="Paintings" backTo="#/">
          <a class={buttonClass('quiet')} href={linkTo(paintingId, 'sheet')}>
            Sheet
          </a>
        </TopBar>
      }
      picture={
        pictures ? (
          <div class={styles.stage}>
            <LookPicture
              studio={studio}
              look={look}
              tools={tools}
              pictures={pictures}
              onTapped={() => toldOnce?.tell(tapTip)}
            />
            {toldOnce && <ToldTips studio={studio} toldOnce={toldOnce} />}
          </div>
        ) : (
          <Waiting studio={studio} />
        )
      }
      panel={
        <StudyPanel
          studio={studio}
          paintingId={paintingId}
          look={look}
          tools={tools.value}
          spots={spots}
          isUp={isUp}
          onSmallStudy={onSmallStudy}
        />
      }
      isUp={isUp}
      actions={
        studio.painting.value?.purpose === 'study' ? (
          <Button large disabled={!seen} onClick={() => void studio.paintIt()}>
            Paint this one too
          </Button>
        ) : seen ? (
          <a class={buttonClass('main', true)} href={linkTo(paintingId, 'plan')}>
            Show me the washes
          </a>
        ) : (
          <Button look="main" large disabled>
            Show me the washes
          </Button>
        )
      }
    />
  );
}

/** A side of the photo of which at least this share is left counts as not cut (own). */
const uncut = 0.99;

/** What a tap on the picture does, as it is remembered that she knows. */
const tapTip = 'tap';

interface ToldTipsProps {
  studio: Pick<Studio, 'painting'>;
  toldOnce: ToldOnce;
}

/** Under the picture, one after the other and each once: that the photo was cut, and what a tap does. */
function ToldTips({ studio, toldOnce }: ToldTipsProps) {
  const painting = studio.painting.value;
  const told = toldOnce.told.value;
  if (!painting || !told) return null;
  const { id, reference } = painting;
  const { crop, sheet } = reference;
  const cutTip = `cut ${id}`;
  const isCut = crop.size.some((share) => share < uncut);
  if (isCut && !told.includes(cutTip)) {
    const name = sheet.format === 'own' ? 'your sheet' : formatNames[sheet.format];
    return (
      <div class={styles.tip} role="status">
        <p>Cropped to {name}.</p>
        <a
          class={buttonClass('quiet')}
          href={linkTo(id, 'sheet')}
          onClick={() => toldOnce.tell(cutTip)}
        >
          Change
        </a>
        <Button look="quiet" onClick={() => toldOnce.tell(cutTip)}>
          OK
        </Button>
      </div>
    );
  }
  if (told.includes(tapTip)) return null;
  return (
    <div class={styles.tip} role="status">
      <p>Tap the picture: colour, and back to grey.</p>
      <Button look="quiet" onClick={() => toldOnce.tell(tapTip)}>
        OK
      </Button>
    </div>
  );
}

interface LookPictureProps {
  studio: Studio;
  look: Look;
  tools: ReadonlySignal<ToolsState>;
  pictures: Pictures;
  onTapped: () => void;
}

/** The picture of the study: by itself, so that a tap on it has nothing else to draw anew. */
function LookPicture({ studio, look, tools, pictures, onTapped }: LookPictureProps) {
  const layers = useStudyLayers(studio, look, tools);
  const kit = loadedTools(tools.value);
  return (
    <Picture
      label="Your reference"
      tapLabel={showsGrey(look) ? 'Tap for colour' : 'Tap for grey'}
      size={pictures.grey}
      layers={layers}
      show={shownLayer(look)}
      tapShows={layerAfterTap(look)}
      ahead={['colour', 'grey', 'values']}
      onTap={() => {
        toggleGrey(look);
        onTapped();
      }}
      turn={look.turn.value}
      over={
        kit &&
        studio.seen.value &&
        look.touching.value && (
          <kit.SpotStage
            look={look}
            bitmap={look.view.value === 'grey' ? pictures.grey : pictures.reference}
          />
        )
      }
    />
  );
}

/** Everything the picture may show, each made anew only when what it shows has changed. */
function useStudyLayers(
  studio: Studio,
  look: Look,
  tools: ReadonlySignal<ToolsState>,
): Readonly<Record<string, Layer>> {
  const { seen, pictures } = studio;
  const inPictures = useComputed(
    (): Record<string, Layer> => (pictures.value ? pictureLayers(pictures.value) : {}),
  );
  const values = useComputed((): Record<string, Layer> => {
    const kit = loadedTools(tools.value);
    const opened = seen.value;
    const limits = look.limits.value;
    if (!opened) return {};
    if (!kit || !limits || !opened.lightnessMap) return { values: valuesLayer(opened) };
    const { lightness, range } = opened.reading;
    return {
      values: kit.liveValuesLayer(opened.lightnessMap, lightness.histogram, limits, range),
    };
  });
  const only = useComputed((): Record<string, Layer> => {
    const band = look.only.value;
    if (!seen.value || band === null) return {};
    return { [`only-${band}`]: singleBandLayer(seen.value, band) };
  });
  const edges = useComputed((): Record<string, Layer> => {
    const found = studyEdges(studio);
    if (found.length === 0 || !pictures.value) return {};
    return { edges: edgeLayer(paled(pictureLayers(pictures.value).grey), found) };
  });
  const squints = useComputed(() => look.view.value === 'squint');
  const light = useComputed(() => {
    const kit = loadedTools(tools.value);
    if (!kit || !squints.value || !pictures.value) return null;
    const pixels = kit.pixelsOf(pictures.value.reference);
    return pixels && kit.reducedLight(pixels);
  });
  const squint = useComputed((): Record<string, Layer> => {
    const kit = loadedTools(tools.value);
    if (!kit || !light.value) return {};
    const how = kit.squintOf(look.squint.value);
    return {
      squint: kit.squintLayer(light.value, how, false),
      'squint-grey': kit.squintLayer(light.value, how, true),
    };
  });
  return { ...inPictures.value, ...values.value, ...only.value, ...edges.value, ...squint.value };
}

/** The colours of the spots she touches, at most two; empty while she does not. */
function useSpots(
  { seen, pictures }: Studio,
  look: Look,
  tools: ReadonlySignal<ToolsState>,
): readonly SpotColours[] {
  const pixels = useComputed(() => {
    const kit = loadedTools(tools.value);
    if (!kit || !look.touching.value || !pictures.value) return null;
    return kit.pixelsOf(pictures.value.reference);
  });
  const spots = useComputed(() => {
    const kit = loadedTools(tools.value);
    const reading = seen.value?.reading;
    if (!kit || !pixels.value || !reading) return [];
    const { raster, sheet } = reading;
    const pxPerMm = computePxPerMm(raster, sheet);
    const moving = look.moving.value;
    const places = moving ? [...look.marks.value, moving] : look.marks.value;
    const currentPixels = pixels.value;
    return places.slice(0, 2).map((spot) => kit.spotColours(currentPixels, spot, pxPerMm));
  });
  return spots.value;
}
