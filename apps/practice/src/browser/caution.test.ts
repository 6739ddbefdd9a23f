import { expect, it } from 'vitest';
import { sharedBrowser } from '../../../../internal/testing/browser.ts';
import { hostHearingPack, openWithDevices } from '../../../../internal/testing/hearing.ts';

const browser = await sharedBrowser();
const host = await hostHearingPack();

it.each([
  // standard: Media Capture and Streams, getSettings of a track: what is really done, whatever was asked for
  [
    'changes its sound',
    { echoCancellation: true, autoGainControl: false },
    /changes what its microphone hears/,
  ],
  ['is another than the loudspeaker', { groupId: 'a camera' }, /by one device and are heard by another/],
  ['does neither', { echoCancellation: false, autoGainControl: false, groupId: 'a phone' }, null],
] as const)(
  '[ST2706] goes by what the track says of itself: a microphone that %s',
  async (_, settings, says) => {
    const page = await openWithDevices(browser, `${host.url}#1`);
    await page.evaluate((told) => {
      MediaStreamTrack.prototype.getSettings = () => ({ ...told });
      const output = { kind: 'audiooutput', label: 'Loudspeaker', groupId: 'a phone' };
      navigator.mediaDevices.enumerateDevices = async () => [output as MediaDeviceInfo];
    }, settings);
    await page.getByRole('button', { name: 'Use the microphone' }).click();
    await page.locator('[data-ear="on"]').waitFor();
    const caution = page.locator('[data-part="caution"]');
    if (says === null) expect(await caution.count()).toBe(0);
    else expect(await caution.textContent()).toMatch(says);
  },
);
