import { useEffect } from 'preact/hooks';
import type { App } from '../../state/create-app.ts';
import { buttonClass } from '../common/button.tsx';
import { ValueScale } from '../common/value-scale.tsx';
import { ExampleCard } from './example-card.tsx';
import { PaintingWall } from './painting-wall.tsx';
import { PhotoChooser } from './photo-chooser.tsx';
import styles from './start-screen.module.css';

/** Camera, a photo, go on with the last painting, the example. Nothing to set up first. */
export function StartScreen({ app }: { app: App }) {
  const { shelf, intake } = app;
  useEffect(() => void shelf.refresh(), [shelf]);
  const [last] = shelf.paintings.value;
  return (
    <main class={styles.start} data-screen="start">
      <header class={styles.head}>
        <h1 class={styles.name}>Firstwash</h1>
        <p class={styles.lead}>See the values, keep the whites, then paint wash by wash.</p>
        <ValueScale />
      </header>
      {intake.problem.value && (
        <p class={styles.problem} role="alert">
          {intake.problem.value}
        </p>
      )}
      {intake.busy.value && <p role="status">Keeping the photo on this device …</p>}
      {last && (
        <section class={styles.last} aria-label="Go on">
          <button type="button" class={styles.lastButton} onClick={() => app.goOn(last)}>
            {last.picture && <img class={styles.lastPicture} src={last.picture} alt="" />}
            <span class={styles.lastWords}>
              <strong>Go on with {last.title}</strong>
              <span>{last.place}</span>
            </span>
          </button>
        </section>
      )}
      <section class={styles.fresh} aria-label="Start a painting">
        <a class={buttonClass(last ? 'plain' : 'main', true, true)} href="#/camera">
          Camera
        </a>
        <PhotoChooser
          text="Choose a photo"
          field="Reference photo"
          multiple
          onFiles={(files) => {
            const [file, ...more] = files;
            if (more.length) void intake.takeSeveral(files);
            else if (file) void intake.take(file);
          }}
        />
        {shelf.candidates.value > 0 && (
          <a class={buttonClass('plain', true, true)} href="#/choose">
            Choose among {shelf.candidates.value} photos
          </a>
        )}
        <PhotoChooser
          text="Only study a picture"
          look="quiet"
          field="Picture to study"
          onFiles={([file]) => file && void intake.study(file)}
        />
        <a class={buttonClass('quiet', true, true)} href="#/box">
          Your paint box
        </a>
      </section>
      <PaintingWall shelf={shelf} onOpen={app.goOn} />
      <ExampleCard intake={intake} />
      <footer class={styles.foot}>
        <p>Photos, plans and records stay on this device. {shelf.keeping.value}</p>
      </footer>
    </main>
  );
}
