import { cssColour, type Lab } from '../../core/colour/lab.ts';
import { lightnessOfOneValue } from '../../core/limits.ts';
import type { Reading } from '../../core/reading/reading.ts';
import { capitalize, formatHalves } from '../../core/words/numbers.ts';
import { bandWord } from '../../core/words/reading-words.ts';
import { valueInWords } from '../../core/words/values.ts';
import { Button } from '../../ui/controls/button.tsx';
import styles from './spot-card.module.css';
import {
  compareSpots,
  comparisonWords,
  misleadingBy,
  nearestFamily,
  type SpotColours,
} from './spot-colours.ts';

interface SpotCardProps {
  reading: Reading;
  /** The first spot, and the second where there is one. */
  spots: readonly SpotColours[];
  onAgain: () => void;
}

/** What a touched spot is: its value and colour, on white, among its neighbours, beside another. */
export function SpotCard({ reading, spots, onAgain }: SpotCardProps) {
  const [first, second] = spots;
  if (!first)
    return (
      <div class={styles.card}>
        <p class={styles.lead} role="status">
          Touch a spot of the picture to see its value. Touch a second one to compare them.
        </p>
      </div>
    );
  return (
    <div class={styles.card} data-testid="spot">
      {second ? (
        <>
          <p class={styles.lead} role="status">
            The second is {comparisonWords(compareSpots(first.lab, second.lab))}.
          </p>
          <PairSwatches first={first} second={second} />
          <SpotFacts reading={reading} lab={first.lab} name="First" />
          <SpotFacts reading={reading} lab={second.lab} name="Second" />
        </>
      ) : (
        <>
          <div role="status">
            <SpotFacts reading={reading} lab={first.lab} />
          </div>
          <SpotSwatches spot={first} />
        </>
      )}
      <p class="quiet">
        {second ? 'Touch again to start over.' : 'Touch a second spot to compare.'}
      </p>
      <Button look="quiet" onClick={onAgain}>
        Clear marks
      </Button>
    </div>
  );
}

/** 'half a value', '1½ values': a difference in L*. */
const stepsInWords = (lightness: number): string =>
  formatHalves(Math.max(1, Math.round((2 * lightness) / lightnessOfOneValue)), 'value');

interface SpotFactsProps {
  reading: Reading;
  lab: Lab;
  name?: string;
}

/** Value, band and colour of a spot in words; a hint where a strong colour misleads the eye. */
function SpotFacts({ reading, lab, name }: SpotFactsProps) {
  const { bands, families } = reading;
  const band = bands.find(({ from }) => lab[0] >= from) ?? bands.at(-1);
  const family = nearestFamily(families, lab);
  const by = misleadingBy(lab);
  const value = valueInWords(lab[0]);
  return (
    <div>
      <p class={name ? undefined : styles.lead}>
        {name ? `${name}: ${value}` : capitalize(value)}
        {band && `, ${bandWord(band.band, bands.length)}`}
      </p>
      <p class={name ? 'quiet' : undefined}>
        {family && `${family.name}, `}L* {lab[0].toFixed(0)}
      </p>
      {by !== null && (
        <p class="quiet">
          It looks about {stepsInWords(by)} lighter than it is: strong reds and blues do. Trust the
          grey.
        </p>
      )}
    </div>
  );
}

/** A spot's colour on white paper, and among what lies around it: the same colour looks different. */
const SpotSwatches = ({ spot }: { spot: SpotColours }) => (
  <div class={styles.swatches}>
    <OnWhite colours={[spot.lab]} name="On white" />
    <Neighbours spot={spot} name="Among its neighbours" />
  </div>
);

/** Two spots beside each other on white, and each among its own neighbours. */
const PairSwatches = ({ first, second }: { first: SpotColours; second: SpotColours }) => (
  <div class={styles.swatches}>
    <Neighbours spot={first} name="First" />
    <OnWhite colours={[first.lab, second.lab]} name="Side by side" />
    <Neighbours spot={second} name="Second" />
  </div>
);

const OnWhite = ({ colours, name }: { colours: readonly Lab[]; name: string }) => (
  <figure>
    <div class={styles.white}>
      {colours.map((lab, i) => (
        <div key={i} style={{ background: cssColour(lab) }} />
      ))}
    </div>
    <figcaption>{name}</figcaption>
  </figure>
);

const Neighbours = ({ spot, name }: { spot: SpotColours; name: string }) => (
  <figure>
    <div class={styles.grid}>
      {spot.grid.map((lab, i) => (
        <div key={i} style={{ background: cssColour(lab) }} />
      ))}
    </div>
    <figcaption>{name}</figcaption>
  </figure>
);
