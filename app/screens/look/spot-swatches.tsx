import { cssColour } from '../../drawing/css-colour.ts';
import type { SpotColours } from '../../drawing/spot-colours.ts';
import type { Lab } from '../../model/lab.ts';
import styles from './spot-swatches.module.css';

/** A spot's colour on white paper, and among what lies around it: the same colour looks different. */
export const SpotSwatches = ({ spot }: { spot: SpotColours }) => (
  <div class={styles.swatches}>
    <OnWhite colours={[spot.lab]} name="On white" />
    <Neighbours spot={spot} name="Among its neighbours" />
  </div>
);

/** Two spots beside each other on white, and each among its own neighbours. */
export const PairSwatches = ({ first, second }: { first: SpotColours; second: SpotColours }) => (
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
