import { useSignal } from '@preact/signals';
import { cssColour } from '../../drawing/css-colour.ts';
import type { LaidMix, MixNeighbour, NeighbourWay } from '../../model/mix-neighbour.ts';
import { valueOfLightness } from '../../model/munsell-value.ts';
import type { Paint } from '../../model/paint.ts';
import { partsInNumbers, partsInWords } from '../../model/parts-in-words.ts';
import { wetLook } from '../../model/wet-look.ts';
import type { PaintCalls } from '../../state/paint-calls.ts';
import { Button } from './button.tsx';
import styles from './mixes-next-to.module.css';
import { useNeighbours } from './use-neighbours.ts';

interface MixesNextToProps {
  calls: PaintCalls;
  optics: readonly Paint[];
  below: readonly LaidMix[];
  mix: LaidMix;
  nameOf: (paint: string) => string;
}

/** The ways to go from a mix, each with what to add and how it comes out beside the mix. */
export function MixesNextTo({ calls, optics, below, mix, nameOf }: MixesNextToProps) {
  const way = useSignal<NeighbourWay | null>(null);
  const { found, problem } = useNeighbours(calls, optics, below, mix);
  if (problem) return <p role="alert">{problem}</p>;
  if (!found) return <p class={styles.quiet}>Looking for the mixes next to it …</p>;
  const shown = found.neighbours.find((each) => each.way === way.value);
  return (
    <section class={styles.next} aria-label="Mixes next to it">
      <div class={styles.found} role="status">
        <span class={styles.pair} aria-hidden="true">
          <span style={{ background: cssColour(found.dry) }} />
          <span style={{ background: cssColour((shown ?? found).dry) }} />
        </span>
        {shown ? (
          <Neighbour neighbour={shown} nameOf={nameOf} />
        ) : (
          <span class={styles.quiet}>
            This mix. Touch the way you want to go: what to add, and its colour beside this one.
          </span>
        )}
      </div>
      <div class={styles.ways}>
        {found.neighbours.map((each) => (
          <Button
            key={each.way}
            aria-pressed={each.way === way.value}
            onClick={() => {
              way.value = each.way === way.value ? null : each.way;
            }}
          >
            {each.way}
          </Button>
        ))}
      </div>
    </section>
  );
}

function Neighbour({
  neighbour,
  nameOf,
}: { neighbour: MixNeighbour } & Pick<MixesNextToProps, 'nameOf'>) {
  const { parts, consistency, dry, wet, add } = neighbour;
  return (
    <span>
      <strong class={styles.add}>{add}</strong>
      <br />
      {partsInWords(parts, nameOf)}
      {parts.length > 1 && ` (${partsInNumbers(parts)})`}, as {consistency}
      <br />
      <span class={styles.quiet}>
        dries to value {valueOfLightness(dry[0]).toFixed(1)}; {wetLook(dry, wet)}
      </span>
    </span>
  );
}
