import { expect, test } from './support/app-page.ts';
import { driveClock, easelButton, goToDrying } from './support/easel-walk.ts';
import { easelOfSmallPhoto } from './support/planned-painting.ts';

test.use({ serviceWorkers: 'allow' });

test('while it dries the screen may rest: the sound plays on under the page’s own policy, and says when it ends', async ({
  page,
}) => {
  await driveClock(page);
  // A browser without windows shows no notices and says so; hers lets this page.
  await page.addInitScript(() =>
    Object.defineProperty(Notification, 'permission', { get: () => 'granted' }),
  );
  await page.goto('./');
  await easelOfSmallPhoto(page);
  await goToDrying(page);
  const reach = page.getByTestId('reach');
  const open = page.locator('summary', { hasText: /^(Calls you|Makes no sound)/ });
  await open.click();
  await expect(reach).toContainText('With the screen off, nothing calls you yet.');
  await expect(reach).toContainText('A notice is shown too, as long as the device lets this page');

  await easelButton(page, 'Let the screen rest').click();
  const face = page.getByTestId('resting');
  await expect(face).toContainText('Calls you with the screen off too');
  await expect(page.getByTestId('told')).not.toHaveText(/Look at the sheet/);
  await page.clock.fastForward(3 * 60 * 60_000);
  await expect(face).toContainText('Look at the sheet');
  await expect(page.getByTestId('told')).toHaveText(/Look at the sheet\. Bone dry/);
  await expect(page.getByTestId('told')).toHaveAttribute('role', 'status');
  await face.getByRole('button').click();
  await expect(face).toHaveCount(0);

  await easelButton(page, 'It is bone dry').click();
  await expect(page.getByTestId('reach')).toHaveCount(0);
  await expect.poll(() => page.evaluate(() => navigator.mediaSession.playbackState)).toBe('none'); // it ends with the wait
});
