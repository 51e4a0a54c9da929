import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { Reading } from '../../model/reading.ts';
import { wayWords } from '../../model/white-words.ts';
import { isSmallWhite, type White, type WhiteWay, whiteWays } from '../../model/whites.ts';
import { Button } from '../common/button.tsx';
import { rowsShown } from './rows-shown.ts';
import { SmallWhitesRow } from './small-whites-row.tsx';
import styles from './white-list.module.css';
import { WhiteRow } from './white-row.tsx';

interface WhiteListProps {
  whites: readonly White[];
  /** As read: with the ways proposed. */
  reading: Reading;
  index: number;
  onShow: (index: number) => void;
  /** -1 means all small whites; a way of null takes back. */
  onWay: (index: number, way: WhiteWay | null) => void;
}

/** The whites by the way they are kept: the large ones one by one, the small ones together. */
export function WhiteList({ whites, reading, index, onShow, onWay }: WhiteListProps) {
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
  const shown = rowsShown(whites, index, all.value);
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
                  />
                </li>
              );
            }),
          ];
        })}
      </ul>
      {hidden > 0 && <Button onClick={() => (all.value = true)}>Show {hidden} more whites</Button>}
      <SmallWhitesRow whites={whites} onWay={(next) => onWay(-1, next)} />
    </>
  );
}
