import { edgeShares } from '../../model/edge-shares.ts';
import type { Reading } from '../../model/reading.ts';
import { linkTo, type PaintingScreen } from '../../state/route.ts';
import styles from './decide-rows.module.css';
import { percent } from './percent.ts';

const shapes = (count: number): string => `${count} ${count === 1 ? 'shape' : 'shapes'}`;

function rowsOf(reading: Reading): readonly (readonly [PaintingScreen, string, string])[] {
  const { reserves, edges = [], families, subject } = reading;
  const hard = edgeShares(edges).find(({ kind }) => kind === 'hard')?.share ?? 0;
  return [
    [
      'whites',
      'Whites to keep',
      reserves.count ? `${percent(reserves.share)}, in ${shapes(reserves.count)}` : 'none',
    ],
    ['edges', 'Edges', edges.length ? `${percent(hard)} of them hard` : 'none'],
    ['colours', 'Colours', `${families.length} ${families.length === 1 ? 'group' : 'groups'}`],
    ['hues', 'Which colours', 'of the photo, your own, one paint'],
    ['subject', 'Subject and ground', subject ? percent(subject.share) : 'one sheet'],
    ['changes', 'Paint it otherwise', 'leave out, lighter, darker'],
  ];
}

/** What she can decide about the reading, each on a page of its own, with how it stands. */
export function DecideRows({ reading, paintingId }: { reading: Reading; paintingId: string }) {
  return (
    <nav aria-label="Decide for yourself">
      <ul class={styles.rows}>
        {rowsOf(reading).map(([screen, name, stands]) => (
          <li key={screen}>
            <a class={styles.row} href={linkTo(paintingId, screen)}>
              <span class={styles.name}>{name}</span>
              <span class={styles.stands}>{stands}</span>
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}
