import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { App } from '../../state/create-app.ts';
import type { Intake } from '../../state/painting/intake.ts';
import type { PaintingCard, Shelf } from '../../state/painting/shelf.ts';
import { hashOf, linkTo } from '../../state/router.ts';
import { AskFirst } from '../../ui/controls/ask-first.tsx';
import { Button, buttonClass } from '../../ui/controls/button.tsx';
import { FileChooser } from '../../ui/controls/file-chooser.tsx';
import { ValueScale } from '../../ui/controls/value-scale.tsx';
import type { CopyLine } from './copy-line.tsx';
import styles from './start-screen.module.css';

/** Where there is a mouse there are photos on the machine, and a camera, if any, that looks at her. */
const photosLieHere = (): boolean => matchMedia('(hover: hover) and (pointer: fine)').matches;

/** Camera, a photo, go on with the last painting, the example. Nothing to set up first. */
export function StartScreen({ app }: { app: App }) {
  const { shelf, intake } = app;
  useEffect(() => void shelf.refresh(), [shelf]);
  const last = shelf.last.value;
  const mainWay = last ? null : photosLieHere() ? 'photo' : 'camera';
  return (
    <main class={styles.start} data-screen="start">
      <header class={styles.head}>
        <h1 class={styles.name}>Firstwash</h1>
        <p class={styles.lead}>See the values, keep the whites, then paint wash by wash.</p>
        <ValueScale />
      </header>
      {app.browserProblem && (
        <p class="problem" role="alert">
          {app.browserProblem}
        </p>
      )}
      {intake.problem.value && (
        <p class="problem" role="alert">
          {intake.problem.value}
        </p>
      )}
      {shelf.problem.value && (
        <p class="problem" role="alert">
          {shelf.problem.value}
        </p>
      )}
      {intake.busy.value && <p role="status">Keeping the photo on this device …</p>}
      {last && (
        <section class={styles.last} aria-label="Go on">
          <button type="button" class={styles.lastButton} onClick={() => app.goOn(last)}>
            {last.picture && <img class={styles.lastPicture} src={last.picture} alt="" />}
            <span class={styles.lastWords}>
              <strong>
                {last.stage === 'finished' ? 'Look back at' : 'Continue'} {last.title}
              </strong>
              <span>{last.place}</span>
            </span>
          </button>
        </section>
      )}
      <section class={styles.fresh} aria-label="Start a painting">
        <a class={buttonClass(mainWay === 'camera' ? 'main' : 'plain', true, true)} href="#/camera">
          Camera
        </a>
        <FileChooser
          text="Choose a photo"
          look={mainWay === 'photo' ? 'main' : 'plain'}
          accept="image/*"
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
        <div class={styles.others}>
          <FileChooser
            text="Just study the values"
            accept="image/*"
            look="quiet"
            field="Picture to study"
            onFiles={([file]) => file && void intake.study(file)}
          />
          <a class={buttonClass('quiet', true, true)} href="#/box">
            Your paint box
          </a>
        </div>
      </section>
      <Reminder app={app} />
      <PaintingWall shelf={shelf} onOpen={app.goOn} />
      <ExampleCard intake={intake} />
      <footer class="quiet">
        <KeepingWords app={app} />
        <a class={buttonClass('quiet')} href="#/about">
          About Firstwash
        </a>
      </footer>
    </main>
  );
}

/** That much has changed since the last copy: fetched when the wall is there, as nobody waits for it. */
function Reminder({ app }: { app: App }) {
  const line = useSignal<typeof CopyLine | null>(null);
  const hung = app.shelf.last.value !== null;
  useEffect(() => {
    if (!hung) return;
    import('./copy-line.tsx').then(
      ({ CopyLine }) => {
        line.value = CopyLine;
      },
      () => undefined, // not on the device yet: the next time
    );
  }, [hung]);
  const Line = line.value;
  return Line && <Line {...app.copyNeeds} />;
}

/** How safe what she made is here, and whether the app opens without a connection. */
function KeepingWords({ app }: { app: App }) {
  const { shelf, storagePromised, updates } = app;
  return (
    <>
      <p>Photos, plans and records stay on this device. {shelf.keeping.value}</p>
      {storagePromised.value === true && <p>The browser has promised to keep them.</p>}
      {storagePromised.value === false && shelf.last.value && (
        <p>
          The browser may clear them when room is short, and some phones when you stay away for a
          week: put Firstwash on your home screen (About Firstwash says how), and keep a copy
          elsewhere.
        </p>
      )}
      {updates.offlineReady.value && <p>Ready to use without a connection.</p>}
    </>
  );
}

/** The example, with its picture: one tap and it is a painting of hers. */
function ExampleCard({ intake }: { intake: Intake }) {
  return (
    <button type="button" class={styles.card} onClick={() => void intake.example()}>
      <img class={styles.picture} src={intake.examplePicture} alt="" />
      <span class={styles.words}>
        <strong>The example</strong>
        <span>Seed heads in a meadow, last light</span>
      </span>
    </button>
  );
}

interface PaintingWallProps {
  shelf: Shelf;
  onOpen: (painting: PaintingCard) => void;
}

/** All paintings as pictures. Taking one away asks first and can be undone. */
function PaintingWall({ shelf, onOpen }: PaintingWallProps) {
  const paintings = shelf.paintings.value;
  const removed = shelf.removed.value;
  if (!paintings.length && !removed) return null;
  return (
    <section class={styles.wall} aria-label="Paintings">
      <h2 class={styles.heading}>Paintings</h2>
      {removed && (
        <p class={styles.removed} role="status">
          {removed.title} was taken away.
          <Button onClick={() => void shelf.bringBack()}>Bring it back</Button>
        </p>
      )}
      <ul class={styles.pictures}>
        {paintings.map((painting) => (
          <li key={painting.id} class={styles.painting}>
            <button
              type="button"
              class={styles.open}
              disabled={painting.stage === 'damaged'}
              onClick={() => onOpen(painting)}
            >
              {painting.picture ? (
                <img
                  class={styles.paintingWallPicture}
                  src={painting.picture}
                  alt=""
                  decoding="async"
                />
              ) : (
                <span class={styles.paintingWallPicture} />
              )}
              <strong class={styles.title}>{painting.title}</strong>
              <span class="quiet">{painting.place}</span>
            </button>
            {painting.stage === 'easel' && (
              <a
                class={buttonClass('quiet')}
                href={linkTo(painting.id, 'record')}
                aria-label={`Record of ${painting.title}`}
              >
                Record
              </a>
            )}
            {painting.stage === 'damaged' && (
              <a
                class={buttonClass('quiet')}
                href={hashOf({ screen: 'copies', what: painting.id })}
              >
                Save what is left
              </a>
            )}
            <AskFirst
              spoken={`Remove ${painting.title}`}
              question="Remove it, photo and record too?"
              yes="Remove"
              onYes={() => void shelf.remove(painting.id)}
            >
              Remove
            </AskFirst>
          </li>
        ))}
      </ul>
      {shelf.more.value > 0 && <MorePaintings shelf={shelf} />}
    </section>
  );
}

/** The rest of a long wall: hung when she comes near it, or by a tap. */
function MorePaintings({ shelf }: { shelf: Shelf }) {
  const end = useRef<HTMLDivElement>(null);
  const hung = shelf.paintings.value.length;
  useEffect(() => {
    if (!end.current || typeof IntersectionObserver === 'undefined') return;
    const watching = new IntersectionObserver(([seen]) => {
      if (seen?.isIntersecting) void shelf.showMore();
    });
    watching.observe(end.current);
    return () => watching.disconnect();
  }, [shelf, hung]);
  return (
    <div ref={end}>
      <Button wide onClick={() => void shelf.showMore()}>
        Show {shelf.more.value} more
      </Button>
    </div>
  );
}
