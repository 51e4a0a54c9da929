import {
  type Edge,
  type EdgeKind,
  edgeShares,
  edgesOnSheet,
} from '../../core/reading/edges/edge.ts';
import { edgeLines } from '../../drawing/line-layers.ts';
import styles from './edge-facts.module.css';

const meaning: Record<EdgeKind, string> = {
  hard: 'clear and sharp: paint it on dry paper',
  soft: 'blurred: use a damp brush or wet paper',
  found: 'slight but sharp: a small step, on dry paper',
  lost: 'hardly seen: paint both sides in one wash',
};

const percent = (share: number): string => `${Math.round(share * 100)} %`;

/**
 * What share of all edges is of each kind, with the line it is drawn by; once she has decided some, as
 * she wants them beside it.
 */
export function EdgeFacts({ edges }: { edges: readonly Edge[] }) {
  const decided = edges.some(({ wish }) => wish !== undefined);
  const wanted = edgeShares(edgesOnSheet(edges));
  return (
    <table class={styles.edges}>
      <caption class={styles.caption}>All edges by length, as drawn over the picture</caption>
      {decided && (
        <thead>
          <tr>
            <td />
            <td />
            <th scope="col">In the photo</th>
            <th scope="col">As you want it</th>
          </tr>
        </thead>
      )}
      <tbody>
        {edgeShares(edges).map(({ kind, share }, i) => (
          <tr key={kind}>
            <td>
              <LineSample kind={kind} />
            </td>
            <th scope="row">
              {kind}
              <span class={styles.meaning}>{meaning[kind]}</span>
            </th>
            <td class={styles.share}>{percent(share)}</td>
            {decided && (
              <td class={styles.share} data-wanted>
                {percent(wanted[i]?.share ?? 0)}
              </td>
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The line as over the picture, drawn as if the long side were 900 px. */
function LineSample({ kind }: { kind: EdgeKind }) {
  const { width, dash } = edgeLines[kind];
  return (
    <svg class={styles.sample} viewBox="0 0 44 12" aria-hidden="true">
      <line
        x1="4"
        y1="6"
        x2="40"
        y2="6"
        stroke="currentColor"
        stroke-width={width * 900}
        stroke-linecap="round"
        stroke-dasharray={dash.map((share) => share * 900).join(' ')}
      />
    </svg>
  );
}
