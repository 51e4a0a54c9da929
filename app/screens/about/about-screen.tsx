import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import { careWithPaint } from '../../core/words/cautions.ts';
import { megabytesInWords } from '../../core/words/numbers.ts';
import { nameOfBuild } from '../../state/name-of-build.ts';
import { hashOf } from '../../state/router.ts';
import { createSpaceUsed, type SpaceStore, type SpaceUsed } from '../../state/space-used.ts';
import { AskFirst } from '../../ui/controls/ask-first.tsx';
import { Button, buttonClass } from '../../ui/controls/button.tsx';
import { PageLayout } from '../../ui/layout/page-layout.tsx';
import { TopBar } from '../../ui/layout/screen-layout.tsx';
import styles from './about-screen.module.css';

/** Put in by the build: what is new in this version, a sentence each, from .github/CHANGELOG.md. */
declare const __CHANGES__: readonly string[];

/** Help, copies, space, licences, privacy, version and what is new: what nobody needs while painting. */
export function AboutScreen({ store }: { store: SpaceStore }) {
  const spaceUsed = useMemo(() => createSpaceUsed(store), [store]);
  return (
    <PageLayout
      name="about"
      class={styles.page}
      top={<TopBar title="About Firstwash" back="Paintings" backTo={hashOf({ screen: 'start' })} />}
    >
      <Part title="Help">
        <ol class={styles.list}>
          <li>Begin with a photo, or with the example: it is yours to try things on.</li>
          <li>
            The value study comes first: look in grey, then say which whites, edges and colours you
            want.
          </li>
          <li>
            The wash plan shows every step, and the sheet as it should look after it. What you do
            not like you can change.
          </li>
          <li>
            At the easel one step is shown at a time. More, at its foot, tells what to do when
            something goes wrong.
          </li>
        </ol>
        <p>Colours and times are estimates: brush every puddle on a scrap first. {careWithPaint}</p>
        <p>
          Something wrong with the app? Tell whoever gave it to you, with the version below and what
          you had just done.
        </p>
      </Part>
      <Part title="On your home screen">
        <p>
          There it opens like any app, and what you made is safer: an iPhone or iPad may clear a
          site you have not visited for a week, but not an app on the home screen.
        </p>
        {/* By the systems' own words, from memory; the week: WebKit, Full Third-Party Cookie Blocking and More, 2020. */}
        <ul class={styles.list}>
          <li>iPhone, iPad: in Safari touch Share, then Add to Home Screen.</li>
          <li>Android: open the browser’s menu, then Add to Home screen, or Install.</li>
          <li>Computer: choose Install in the address line, or in the browser’s menu.</li>
        </ul>
      </Part>
      <Part title="Copies">
        <p>
          One file with all you have here, to be kept elsewhere: your paintings come back from it on
          any device.
        </p>
        <p>
          <a class={buttonClass()} href={hashOf({ screen: 'copies' })}>
            Keep a copy, bring one back
          </a>
        </p>
      </Part>
      <Part title="Space on this device">
        <SpaceList spaceUsed={spaceUsed} />
      </Part>
      <Part title="Licences">
        <p>
          The code is free to use under the MIT licence. The tables of paints, the example and the
          libraries have terms of their own.
        </p>
        <LicenceText />
        <p>
          <a class={buttonClass('quiet')} href={licencesFile}>
            The licences as a file
          </a>
        </p>
      </Part>
      <Part title="Privacy">
        <p>
          Your photos, plans and records stay on this device, and the app asks nothing of any
          address but its own. Clearing this site’s data in the browser deletes them: keep a copy.
        </p>
      </Part>
      <Part title="Version">
        <p data-testid="version">{nameOfBuild(document)}</p>
      </Part>
      <Part title="What is new">
        <ul class={styles.list}>
          {__CHANGES__.map((change) => (
            <li key={change}>{change}</li>
          ))}
        </ul>
      </Part>
    </PageLayout>
  );
}

/** What each painting takes up, measured when it is asked for; record photos are the first to do without. */
function SpaceList({ spaceUsed }: { spaceUsed: SpaceUsed }) {
  const asked = useSignal<AbortController | null>(null);
  useEffect(() => () => asked.peek()?.abort(), []);
  const measure = (): void => {
    asked.value = new AbortController();
    void spaceUsed.open(asked.value.signal);
  };
  if (!asked.value)
    return (
      <>
        <p>Short of room? Delete photos of the record first, then paintings you no longer need.</p>
        <p>
          <Button onClick={measure}>See what takes up room</Button>
        </p>
      </>
    );
  const { rows, totalBytes, measuring, problem } = spaceUsed;
  return (
    <>
      <p role="status">
        {measuring.value
          ? 'Measuring …'
          : `Your paintings take up ${megabytesInWords(totalBytes.value)} in all.`}
      </p>
      {problem.value && <p role="alert">{problem.value}</p>}
      <ul class={styles.list}>
        {rows.value.map(({ id, title, bytes, recordPhotoBytes }) => (
          <li key={id} class={styles.space}>
            {title}: {megabytesInWords(bytes)}
            {recordPhotoBytes > 0 && (
              <AskFirst
                question="They can’t be brought back. What you did stays written."
                yes="Delete photos"
                onYes={() => void spaceUsed.dropRecordPhotos(id)}
              >
                {`Delete its record photos, ${megabytesInWords(recordPhotoBytes)}`}
              </AskFirst>
            )}
          </li>
        ))}
      </ul>
    </>
  );
}

function Part({ title, children }: { title: string; children: ComponentChildren }) {
  return (
    <section class={styles.part} aria-label={title}>
      <h2 class={styles.heading}>{title}</h2>
      {children}
    </section>
  );
}

/** Written by the build beside the page, and kept on the device with it. */
const licencesFile = './licences.txt';

const missing =
  'The licences could not be opened just now. They come with the app: reload it when you have a network, and try again.';

/** All notices, fetched when they are first asked for. */
function LicenceText() {
  const text = useSignal<string | null>(null);
  const read = async (): Promise<void> => {
    try {
      const answer = await fetch(licencesFile);
      if (!answer.ok) throw new Error(`${licencesFile}: ${answer.status}`);
      text.value = await answer.text();
    } catch {
      text.value = missing;
    }
  };
  return (
    <details
      onToggle={(event) => {
        if (event.currentTarget.open && (text.value ?? missing) === missing) void read();
      }}
    >
      <summary class={styles.summary}>Read all licences</summary>
      <p class={styles.text} role="status" data-testid="licences">
        {text.value ?? 'Opening the licences …'}
      </p>
    </details>
  );
}
