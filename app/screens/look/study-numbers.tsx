import type { Reading } from '../../model/reading.ts';
import { percent } from './percent.ts';
import styles from './study-facts.module.css';

/** The bands in figures, for who wants them. */
export function StudyNumbers({ reading }: { reading: Reading }) {
  return (
    <table class={styles.numbers}>
      <caption class={styles.quiet}>
        Lightness L* 0 black to 100 white; value 0 black to 10 white (ASTM D1535)
      </caption>
      <thead>
        <tr>
          <th scope="col">Band</th>
          <th scope="col">L* from – to</th>
          <th scope="col">Value</th>
          <th scope="col">Area</th>
          <th scope="col">On the sheet</th>
        </tr>
      </thead>
      <tbody>
        {reading.bands.map((band) => (
          <tr key={band.band}>
            <th scope="row">{band.band}</th>
            <td>
              {band.from.toFixed(0)} – {band.to.toFixed(0)}
            </td>
            <td>{band.value.toFixed(1)}</td>
            <td>{percent(band.share)}</td>
            <td>L* {band.plannedLightness.toFixed(0)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
