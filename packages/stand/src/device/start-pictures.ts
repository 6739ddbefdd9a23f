/**
 * What a phone shows while a page of its home screen opens. iOS and iPadOS want pictures of exactly the size of their
 * screens and show white without one, so the page draws them for the device that it is on.
 *
 * Conventions: lengths in CSS pixels, pictures in those of the device.
 * Source: Apple, Configuring Web Applications, `apple-touch-startup-image`; `navigator.standalone` is there on such
 * devices only.
 */

/** Width of the mark in the middle. */
const MARK_WIDTH = 128;

/** The mark on a ground, for a screen of a size. @returns an address of data */
function draw(mark: CanvasImageSource, ground: string, width: number, height: number): string {
  const ratio = devicePixelRatio;
  const canvas = document.createElement('canvas');
  canvas.width = width * ratio;
  canvas.height = height * ratio;
  const pen = canvas.getContext('2d');
  if (!pen) return '';
  pen.scale(ratio, ratio);
  pen.fillStyle = ground;
  pen.fillRect(0, 0, width, height);
  pen.drawImage(mark, (width - MARK_WIDTH) / 2, (height - MARK_WIDTH) / 2, MARK_WIDTH, MARK_WIDTH);
  return canvas.toDataURL('image/png');
}

/** Adds one picture to the head of the page. */
function addPicture(href: string, media: string): void {
  document.head.append(
    Object.assign(document.createElement('link'), { rel: 'apple-touch-startup-image', href, media }),
  );
}

/** Adds the pictures of a device that asks for them: upright and on its side, on each of the page's grounds. */
export async function addStartPictures(): Promise<void> {
  const mark = document.querySelector<HTMLLinkElement>('link[rel="icon"]');
  if (!('standalone' in navigator) || !mark) return;
  const image = Object.assign(new Image(MARK_WIDTH, MARK_WIDTH), { src: mark.href });
  await image.decode();
  const short = Math.min(screen.width, screen.height);
  const long = Math.max(screen.width, screen.height);
  for (const { content, media } of document.querySelectorAll<HTMLMetaElement>('meta[name="theme-color"]')) {
    const lying = (position: string) => [media, `(orientation: ${position})`].join(' and ');
    addPicture(draw(image, content, short, long), lying('portrait'));
    addPicture(draw(image, content, long, short), lying('landscape'));
  }
}
