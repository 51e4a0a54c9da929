import type { RangeMode } from '../../model/reading.ts';
import type { Seen } from '../../state/seen.ts';
import type { Studio } from '../../state/studio.ts';
import { ChoiceRow } from '../common/choice-row.tsx';
import styles from './study-facts.module.css';
import type { ToolsState } from './use-study-tools.ts';

interface RangeChoiceProps {
  studio: Studio;
  seen: Seen;
  tools: ToolsState;
}

/** As photographed or opened up: side by side as pictures where there are any, else in words. */
export function RangeChoice({ studio, seen, tools }: RangeChoiceProps) {
  const { reading, lightnessMap } = seen;
  const choose = (mode: RangeMode): void => {
    if (mode !== reading.range.mode) void studio.decide({ kind: 'range', mode });
  };
  const pictured = typeof tools === 'object' && lightnessMap !== undefined;
  return (
    <>
      <h2 class={styles.heading}>As the sheet can do it</h2>
      {pictured ? (
        <tools.RangePictures reading={reading} lightnessMap={lightnessMap} onChoose={choose} />
      ) : (
        <ChoiceRow
          label="How dark and light the sheet becomes"
          choices={[
            ['photographed', 'As photographed'],
            ['opened', 'Opened up'],
          ]}
          chosen={reading.range.mode}
          onChoose={choose}
        />
      )}
      <p class={styles.quiet}>
        {reading.range.mode === 'opened'
          ? 'Opened up: the lightest becomes paper white, the darkest as dark as your paints reach.'
          : 'As photographed: the picture keeps its own light or dark mood.'}
      </p>
    </>
  );
}
