import { whiteLines } from '../../drawing/whites-layer.ts';
import { countsByWay, wayLetters, wayWords } from '../../model/white-words.ts';
import { type White, whiteWays } from '../../model/whites.ts';
import styles from './white-legend.module.css';

/** Shares of the picture's long side, to the sample's own units. */
const scale = 1000;

/** How each way is drawn, and how many whites go that way. */
export function WhiteLegend({ whites }: { whites: readonly White[] }) {
  const counts = countsByWay(whites);
  return (
    <ul class={styles.legend} aria-label="How whites are kept">
      {whiteWays.map((way) => (
        <li key={way}>
          <svg class={styles.sample} viewBox="0 0 44 18" aria-hidden="true">
            {[2, 0].map((casing) => (
              <path
                key={casing}
                class={casing ? styles.casing : undefined}
                d="M4 9H40"
                stroke={casing ? undefined : 'black'}
                stroke-linecap="round"
                stroke-width={whiteLines[way].width * scale + casing}
                stroke-dasharray={whiteLines[way].dash.map((share) => share * scale).join(' ')}
              />
            ))}
          </svg>
          <span>
            {wayLetters[way]}, {wayWords[way].toLowerCase()}:{' '}
            <strong class={styles.count}>{counts[way]}</strong>
          </span>
        </li>
      ))}
    </ul>
  );
}
