import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { careWithPaint } from '../../core/paint/cautions.ts';
import { hashOf } from '../../state/router.ts';
import { buttonClass } from '../../ui/controls/button.tsx';
import { PageLayout } from '../../ui/layout/page-layout.tsx';
import { TopBar } from '../../ui/layout/screen-layout.tsx';
import styles from './about-screen.module.css';

/** Put in by the build: what is new in this version, a sentence each, from .github/CHANGELOG.md. */
declare const __CHANGES__: readonly string[];

/** The build names itself once, in the head of its page. */
const nameOfBuild = (): string =>
  document.querySelector<HTMLMetaElement>('meta[name=version]')?.content ?? 'unknown';

/** Version, what is new, help, licences, privacy: what nobody needs while painting. */
export function AboutScreen() {
  return (
    <PageLayout
      name="about"
      top={<TopBar title="About Firstwash" back="Paintings" backTo={hashOf({ screen: 'start' })} />}
    >
      <Part title="Version">
        <p data-testid="version">{nameOfBuild()}</p>
      </Part>
      <Part title="What is new">
        <ul class={styles.list}>
          {__CHANGES__.map((change) => (
            <li key={change}>{change}</li>
          ))}
        </ul>
      </Part>
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
          Something wrong with the app? Tell whoever gave it to you, with the version above and what
          you had just done.
        </p>
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
          address but its own. Clearing this site’s data in the browser deletes them.
        </p>
      </Part>
    </PageLayout>
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
