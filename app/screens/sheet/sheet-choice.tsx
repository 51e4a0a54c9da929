import {
  orientationOf,
  type Sheet,
  type SheetFormat,
  sheetFormats,
  sheetOf,
  turned,
} from '../../model/sheet.ts';
import { buttonClass } from '../common/button.tsx';
import { ChoiceRow } from '../common/choice-row.tsx';
import styles from './sheet-choice.module.css';

const imperial = ['eighth', 'quarter', 'half', 'full'] as const;
const metric = ['a5', 'a4', 'a3', 'a2'] as const;

/** Sheets are drawn to one scale, so that they can be compared: mm to px. */
const drawnScale = 24 / sheetFormats.full.longMm;

interface FormatButtonProps {
  sheet: Sheet;
  name: string;
  chosen: boolean;
  onChoose: () => void;
}

function FormatButton({ sheet, name, chosen, onChoose }: FormatButtonProps) {
  const [width, height] = [sheet.widthMm * drawnScale, sheet.heightMm * drawnScale];
  return (
    <button type="button" class={styles.format} aria-pressed={chosen} onClick={onChoose}>
      <svg class={styles.drawn} viewBox="0 0 26 26" width="26" height="26" aria-hidden="true">
        <rect x={13 - width / 2} y={25 - height} width={width} height={height} />
      </svg>
      <span class={styles.name}>{name}</span>
      <span class={styles.size}>
        {sheet.widthMm}&#8239;×
        <wbr />
        &#8239;{sheet.heightMm}
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
  const formatButton = (format: Exclude<SheetFormat, 'own'>, name: string) => (
    <FormatButton
      key={format}
      sheet={sheetOf(format, orientation)}
      name={name}
      chosen={sheet.format === format}
      onChoose={() => onChoose(sheetOf(format, orientation))}
    />
  );
  return (
    <>
      <fieldset class={styles.formats}>
        <legend class="spoken">Imperial papers, in mm</legend>
        {imperial.map((format) =>
          formatButton(format, format.charAt(0).toUpperCase() + format.slice(1)),
        )}
      </fieldset>
      <fieldset class={styles.formats}>
        <legend class="spoken">A sizes, in mm</legend>
        {metric.map((format) => formatButton(format, sheetFormats[format].name))}
      </fieldset>
      <div class={styles.lies}>
        <button
          type="button"
          class={buttonClass()}
          aria-pressed={sheet.format === 'own'}
          onClick={() => onChoose({ ...sheet, format: 'own' })}
        >
          Own size
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
