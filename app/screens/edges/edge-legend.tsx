import { decidedMark } from '../../drawing/edge-layer.ts';
import type { Edge } from '../../model/edge.ts';
import { lengthInWords } from '../../model/edge-words.ts';
import styles from './edge-legend.module.css';

const flags: readonly (readonly [
  flag: 'graded' | 'heldByColour' | 'outOfFocus',
  name: string,
  meaning: string,
])[] = [
  ['graded', 'Graded', 'so wide that it is a graded wash, no edge'],
  ['heldByColour', 'Held by colour', 'lost in value, the hues still part it'],
  ['outOfFocus', 'Out of focus', 'the lens may have made it soft'],
];

/** What else is told of edges: how much is graded, held by colour, out of focus, and decided by her. */
export function EdgeLegend({ edges }: { edges: readonly Edge[] }) {
  const lengthOf = (of: (edge: Edge) => boolean): string => {
    const own = edges.filter(of).reduce((sum, { lengthMm }) => sum + lengthMm, 0);
    return own > 0 ? lengthInWords(own) : 'none';
  };
  return (
    <dl class={styles.legend}>
      {flags.map(([flag, name, meaning]) => (
        <div key={flag}>
          <dt>{name}</dt>
          <dd>
            {meaning}: {lengthOf((edge) => edge[flag])}
          </dd>
        </div>
      ))}
      <div>
        <dt>
          <svg class={styles.sample} viewBox="0 0 44 18" aria-hidden="true">
            <path
              d={`M4 9H40M22 ${9 - decidedMark.length * 450}V${9 + decidedMark.length * 450}`}
              stroke="currentColor"
              stroke-width="2.5"
            />
          </svg>{' '}
          Yours
        </dt>
        <dd>a stroke across: you decided it: {lengthOf(({ wish }) => wish !== undefined)}</dd>
      </div>
    </dl>
  );
}
