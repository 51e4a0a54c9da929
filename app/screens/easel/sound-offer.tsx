import type { EaselSenses } from '../../state/easel-senses.ts';
import { Button } from '../common/button.tsx';

/** One tap lets the clock be heard; after a reload the browser wants a tap again. */
export function SoundOffer({ senses }: { senses: EaselSenses }) {
  switch (senses.sound.value) {
    case 'off':
      return <Button onClick={() => senses.change({ sound: true })}>Sound on</Button>;
    case 'tap':
      return <Button onClick={senses.touched}>Tap for sound</Button>;
    default:
      return null;
  }
}
