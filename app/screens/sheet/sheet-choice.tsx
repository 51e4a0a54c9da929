import { useEffect, useId, useRef, useState } from 'preact/hooks';
import {
  orientationOf,
  type Sheet,
  type SheetFormat,
  sheetFormats,
  sheetOf,
  turned,
} from '../../core/reference/sheet.ts';
import { capitalize } from '../../core/words/numbers.ts';
import { formatNames, ownSheet } from '../../core/words/reference/sheet.ts';
import { inInches } from '../../core/words/units.ts';
import { buttonClass } from '../../ui/controls/button.tsx';
import { ChoiceRow } from '../../ui/controls/choice-row.tsx';
import styles from './sheet-choice.module.css';

const imperial = ['eighth', 'quarter', 'half', 'full'] as const;
const metric = ['a5', 'a4', 'a3', 'a2'] as const;
const blocks = ['in9x12', 'in10x14', 'in12x16', 'cm24x32', 'cm30x40', 'cm36x48'] as const;

/** Sheets are drawn to one scale, so that they can be compared: mm to px. */
const drawnScale = 24 / sheetFormats.full.longMm;

interface FormatButtonProps {
  sheet: Sheet;
  name: string;
  /** Its sides are said in inches, as such paper is sold; else in mm. */
  inches: boolean;
  chosen: boolean;
  onChoose: () => void;
}

function FormatButton({ sheet, name, inches, chosen, onChoose }: FormatButtonProps) {
  const [width, height] = [sheet.widthMm * drawnScale, sheet.heightMm * drawnScale];
  return (
    <button type="button" class={styles.format} aria-pressed={chosen} onClick={onChoose}>
      <svg class={styles.drawn} viewBox="0 0 26 26" width="26" height="26" aria-hidden="true">
        <rect x={13 - width / 2} y={25 - height} width={width} height={height} />
      </svg>
      <span class={styles.name}>{name}</span>
      <span class={styles.size}>
        {inches ? inInches(sheet.widthMm) : sheet.widthMm}&#8239;×
        <wbr />
        &#8239;{inches ? inInches(sheet.heightMm) : sheet.heightMm}
        {inches && '\u202fin'}
      </span>
    </button>
  );
}

interface SheetChoiceProps {
  sheet: Sheet;
  onChoose: (sheet: Sheet) => void;
}

/** The papers the trade sells, her own size, and which way the sheet lies. */
export function SheetChoice({ sheet, onChoose }: SheetChoiceProps) {
  const orientation = orientationOf(sheet);
  const formatButton = (format: Exclude<SheetFormat, 'own'>, name: string, inches = false) => (
    <FormatButton
      key={format}
      sheet={sheetOf(format, orientation)}
      name={name}
      inches={inches}
      chosen={sheet.format === format}
      onChoose={() => onChoose(sheetOf(format, orientation))}
    />
  );
  return (
    <>
      <fieldset class={styles.formats}>
        <legend class="spoken">Imperial papers, in inches</legend>
        {imperial.map((format) => formatButton(format, capitalize(format), true))}
      </fieldset>
      <fieldset class={styles.formats}>
        <legend class="spoken">A sizes, in mm</legend>
        {metric.map((format) => formatButton(format, formatNames[format]))}
      </fieldset>
      <fieldset class={styles.formats} data-three>
        <legend class="spoken">Blocks, in mm</legend>
        {blocks.map((format) => formatButton(format, formatNames[format]))}
      </fieldset>
      <div class={styles.lies}>
        <button
          type="button"
          class={buttonClass()}
          aria-pressed={sheet.format === 'own'}
          onClick={() => onChoose({ ...sheet, format: 'own' })}
        >
          Other size
        </button>
        <ChoiceRow
          label="Which way the sheet lies"
          choices={[
            ['upright', 'Upright'],
            ['across', 'Across'],
          ]}
          chosen={sheet.widthMm === sheet.heightMm ? null : orientation}
          onChoose={(next) => onChoose(turned(sheet, next))}
        />
      </div>
    </>
  );
}

interface OwnSheetFieldsProps {
  sheet: Sheet;
  onChoose: (sheet: Sheet) => void;
  /** The sentence that says why what she typed is no sheet; null once it is one. */
  problem: string | null;
  onProblem: (problem: string | null) => void;
}

const formatMm = (mm: number): string => String(Math.round(mm * 100) / 100);

/** Width and height of her own sheet, typed. Text fields: number fields lose a decimal comma. */
export function OwnSheetFields({ sheet, onChoose, problem, onProblem }: OwnSheetFieldsProps) {
  const id = useId();
  const [width, setWidth] = useState(formatMm(sheet.widthMm));
  const [height, setHeight] = useState(formatMm(sheet.heightMm));
  useEffect(() => {
    setWidth(formatMm(sheet.widthMm));
    setHeight(formatMm(sheet.heightMm));
  }, [sheet.widthMm, sheet.heightMm]);

  const own = useRef<HTMLDivElement>(null);
  // On a phone the panel scrolls: what she is to fill in, and what is wrong with it, must be in sight.
  useEffect(() => {
    own.current?.scrollIntoView({ block: 'nearest' });
  }, [problem]);

  const settle = (): void => {
    const typed = ownSheet(width, height);
    onProblem(typeof typed === 'string' ? typed : null);
    if (typeof typed === 'string') return;
    if (typed.widthMm !== sheet.widthMm || typed.heightMm !== sheet.heightMm) onChoose(typed);
  };
  const field = (
    label: string,
    name: 'width' | 'height',
    text: string,
    set: (t: string) => void,
  ) => (
    <label class={styles.field}>
      <span>{label}</span>
      <input
        class={styles.input}
        type="text"
        inputMode="decimal"
        autocomplete="off"
        enterkeyhint="done"
        value={text}
        aria-invalid={problem?.includes(` ${name} `) ?? false}
        aria-describedby={problem ? `${id}-problem` : undefined}
        onInput={(event) => {
          set(event.currentTarget.value);
          if (problem) onProblem(null);
        }}
        onChange={settle}
        onKeyDown={(event) => {
          if (event.key === 'Enter') settle();
        }}
      />
      <span aria-hidden="true">mm</span>
    </label>
  );
  return (
    <div ref={own} class={styles.own}>
      {field('Width', 'width', width, setWidth)}
      {field('Height', 'height', height, setHeight)}
      {problem && (
        <p id={`${id}-problem`} class={styles.problem} role="alert">
          {problem}
        </p>
      )}
    </div>
  );
}
