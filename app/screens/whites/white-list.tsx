import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import type { Point } from '../../core/colour/lab.ts';
import { smallShapeMm } from '../../core/limits.ts';
import type { PixelSize } from '../../core/raster/size.ts';
import type { WhiteOutline } from '../../core/raster/trace-outlines.ts';
import type { Reading } from '../../core/reading/reading.ts';
import {
  isSmallWhite,
  type White,
  type WhiteWay,
  whiteWays,
} from '../../core/reading/whites/whites.ts';
import { openWithCount } from '../../core/words/numbers.ts';
import { words } from '../../core/words/plan/words.ts';
import {
  countsInWords,
  wayWords,
  whiteInWords,
  whiteWhyInWords,
} from '../../core/words/reading/whites.ts';
import { Button } from '../../ui/controls/button.tsx';
import { ChoiceRow } from '../../ui/controls/choice-row.tsx';
import { SmallPicture } from '../../ui/picture/small-picture.tsx';
import { shownRows } from './use-whites.ts';
import styles from './white-list.module.css';

interface WhiteListProps {
  whites: readonly White[];
  /** As read: with the ways proposed. */
  reading: Reading;
  index: number;
  onShow: (index: number) => void;
  /** It is no white at all: it is painted. */
  onRefuse: (index: number) => void;
  /** The picture each is shown a part of. */
  bitmap: ImageBitmap;
  outlines: readonly WhiteOutline[];
  /** -1 means all small whites; a way of null takes back. */
  onWay: (index: number, way: WhiteWay | null) => void;
}

/** The whites by the way they are kept: the large ones one by one, the small ones together. */
export function WhiteList(props: WhiteListProps) {
  const { whites, reading, index, bitmap, outlines, onShow, onRefuse, onWay } = props;
  const lines = useMemo(() => linesRound(outlines, reading.raster), [outlines, reading]);
  const all = useSignal(false);
  const list = useRef<HTMLUListElement>(null);
  const way = whites[index]?.way;
  // The row comes to her, also where a new way has put it elsewhere; a moved button loses the keys.
  useEffect(() => {
    const row = list.current?.querySelector<HTMLElement>(`[data-white="${index + 1}"]`);
    row?.scrollIntoView({ block: 'nearest' });
    if (row && document.activeElement === document.body) {
      row.querySelector<HTMLElement>('fieldset [aria-pressed="true"]')?.focus();
    }
  }, [index, way]);
  const shown = shownRows(whites, index, all.value);
  const large = whites.filter((white) => !isSmallWhite(white)).length;
  const hidden = large - shown.filter((i) => !isSmallWhite(whites[i] as White)).length;
  return (
    <>
      <ul class={styles.list} ref={list}>
        {whiteWays.flatMap((kept) => {
          const own = shown.filter((i) => whites[i]?.way === kept);
          if (own.length === 0) return [];
          return [
            <li key={kept} class={styles.heading}>
              <h2>{wayWords[kept]}</h2>
            </li>,
            ...own.map((i) => {
              const white = whites[i] as White;
              return (
                <li key={i}>
                  <WhiteRow
                    white={white}
                    number={i + 1}
                    proposed={reading.whites?.[i]?.way ?? white.way}
                    chosen={i === index}
                    sheet={reading.sheet}
                    onShow={() => onShow(i)}
                    onWay={(next) => onWay(i, next)}
                    onRefuse={() => onRefuse(i)}
                    small={<SmallPicture bitmap={bitmap} lines={lines.get(i) ?? noLines} />}
                  />
                </li>
              );
            }),
          ];
        })}
      </ul>
      {hidden > 0 && <Button onClick={() => (all.value = true)}>Show {hidden} more</Button>}
      <SmallWhitesRow whites={whites} onWay={(next) => onWay(-1, next)} />
    </>
  );
}

interface WhiteRowProps {
  white: White;
  /** As in the picture, from 1. */
  number: number;
  /** The way proposed for it. */
  proposed: WhiteWay;
  chosen: boolean;
  sheet: { readonly widthMm: number; readonly heightMm: number };
  onShow: () => void;
  /** null takes her decision back. */
  onWay: (way: WhiteWay | null) => void;
  onRefuse: () => void;
  /** What it looks like in the picture. */
  small: ComponentChildren;
}

const noLines: readonly (readonly Point[])[] = [];

/** The outlines of every white as lines over the picture, 0..1 of its sides. */
function linesRound(
  outlines: readonly WhiteOutline[],
  { width, height }: PixelSize,
): ReadonlyMap<number, readonly (readonly Point[])[]> {
  const lines = new Map<number, Point[][]>();
  for (const { white, points } of outlines) {
    const line = Array.from(
      { length: points.length / 2 },
      (_, i): Point => [(points[2 * i] ?? 0) / width, (points[2 * i + 1] ?? 0) / height],
    );
    lines.set(white, [...(lines.get(white) ?? []), [...line, ...line.slice(0, 1)]]);
  }
  return lines;
}

const wayChoices = whiteWays.map((way) => [way, wayWords[way]] as const);

/** One white: how large it is, how it is kept, and why that is proposed. */
function WhiteRow(props: WhiteRowProps) {
  const { white, number, proposed, chosen, sheet, small, onShow, onWay, onRefuse } = props;
  return (
    <div class={styles.row} data-chosen={chosen} data-white={number}>
      <button type="button" class={styles.name} aria-pressed={chosen} onClick={onShow}>
        {small}
        <span class={styles.number}>
          <span class="spoken">White </span>
          {number}
        </span>
        <span>{whiteInWords(white, sheet)}</span>
      </button>
      <ChoiceRow
        label={`How white ${number} is kept`}
        choices={wayChoices}
        chosen={white.way}
        onChoose={(way) => (way !== white.way || !white.decided) && onWay(way)}
      />
      <p class="quiet">
        {white.decided ? `Proposed: ${wayWords[proposed].toLowerCase()}. ` : ''}
        {whiteWhyInWords(white.why)}
      </p>
      {white.way === 'mask' && chosen && (
        <p data-testid="mask-care">{words({ say: 'caution/mask-fluid' })}</p>
      )}
      <div class={styles.acts}>
        <Button aria-label={`White ${number} is not white: paint it`} onClick={onRefuse}>
          Not white: paint it
        </Button>
        {white.decided && <Button onClick={() => onWay(null)}>As proposed</Button>}
      </div>
    </div>
  );
}

interface SmallWhitesRowProps {
  whites: readonly White[];
  /** For all small ones; null takes what was decided about them back. */
  onWay: (way: WhiteWay | null) => void;
}

/** The reason most of them share. */
function commonWhy(whites: readonly White[]): string {
  const said = new Map<string, number>();
  for (const { why } of whites) {
    const sentence = whiteWhyInWords(why);
    said.set(sentence, (said.get(sentence) ?? 0) + 1);
  }
  return [...said].sort((one, other) => other[1] - one[1])[0]?.[0] ?? '';
}

/** All small whites in one row, with one choice for all. */
function SmallWhitesRow({ whites, onWay }: SmallWhitesRowProps) {
  const small = whites.filter(isSmallWhite);
  if (small.length === 0) return null;
  const [first] = small;
  const same = small.every(({ way }) => way === first?.way) ? (first?.way ?? null) : null;
  const number = openWithCount(small.length, 'small white');
  return (
    <div class={styles.row} data-testid="small-whites">
      <p>
        <strong>
          {number}, under {smallShapeMm} mm
        </strong>
        {same === null && `: ${countsInWords(small)}`}
      </p>
      <ChoiceRow
        label="How the small whites are kept"
        choices={wayChoices}
        chosen={same}
        onChoose={(way) => (way !== same || !small.every(({ decided }) => decided)) && onWay(way)}
      />
      <p class="quiet">{commonWhy(small)}</p>
      {small.some(({ way }) => way === 'mask') && (
        <p data-testid="mask-care">{words({ say: 'caution/mask-fluid' })}</p>
      )}
      {small.some(({ decided }) => decided) && (
        <Button onClick={() => onWay(null)}>As proposed</Button>
      )}
    </div>
  );
}
