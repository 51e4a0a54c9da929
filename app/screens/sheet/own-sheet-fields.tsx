import { useEffect, useId, useRef, useState } from 'preact/hooks';
import { ownSheet } from '../../model/own-sheet.ts';
import type { Sheet } from '../../model/sheet.ts';
import styles from './own-sheet-fields.module.css';

interface OwnSheetFieldsProps {
  sheet: Sheet;
  onChoose: (sheet: Sheet) => void;
  /** The sentence that says why what she typed is no sheet; null once it is one. */
  problem: string | null;
  onProblem: (problem: string | null) => void;
}

const written = (mm: number): string => String(Math.round(mm * 100) / 100);

/** Width and height of her own sheet, typed. Text fields: number fields lose a decimal comma. */
export function OwnSheetFields({ sheet, onChoose, problem, onProblem }: OwnSheetFieldsProps) {
  const id = useId();
  const [width, setWidth] = useState(written(sheet.widthMm));
  const [height, setHeight] = useState(written(sheet.heightMm));
  useEffect(() => {
    setWidth(written(sheet.widthMm));
    setHeight(written(sheet.heightMm));
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
