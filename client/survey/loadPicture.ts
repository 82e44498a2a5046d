import { PICTURE_BYTES } from '#model/schema/picture.ts';

export interface LoadedPicture {
  readonly source: string;
  /** px */
  readonly width: number;
  readonly height: number;
  /** It was made smaller to be kept. */
  readonly isSmaller: boolean;
}

/** px of the longer side: at first, and when it is no plan any more. */
const LONGEST = 2400;
const SHORTEST = 400;
const QUALITY = 0.75;
const MOST_FILE = 40 * 1024 * 1024;

/**
 * A picture file as it is kept: of at most 300 kB, so that every tablet can hold and send it.
 * @throws Error in words for people, when it is no picture or cannot be made small enough.
 */
export async function loadPicture(file: File): Promise<LoadedPicture> {
  if (!/^image\/(?:png|jpeg|webp)$/.test(file.type))
    throw new Error(
      `${file.name} is no picture that can be laid here. Choose a JPG, PNG or WebP file; a PDF page has to be saved as a picture first.`,
    );
  if (file.size > MOST_FILE) throw new Error(`${file.name} is larger than 40 MB. Take a smaller picture of the plan.`);
  const image = await createImageBitmap(file, { imageOrientation: 'from-image' }).catch(() => {
    throw new Error(`${file.name} cannot be read as a picture. Open it elsewhere and save it again as JPG or PNG.`);
  });
  try {
    const longest = Math.max(image.width, image.height);
    const isSmall = file.size * (4 / 3) + 100 < PICTURE_BYTES && longest <= LONGEST;
    // A phone's photo may lie on its side: only drawn again does it lie as it is shown.
    if (isSmall && file.type === 'image/png')
      return { source: await dataAddress(file), width: image.width, height: image.height, isSmaller: false };
    let side = Math.min(longest, LONGEST);
    while (side >= Math.min(longest, SHORTEST)) {
      const drawn = await drawnAgain(image, side / longest, QUALITY);
      const { length } = drawn.source;
      if (length <= PICTURE_BYTES) return { ...drawn, isSmaller: side < longest || file.size > length };
      // Bytes go about with the area.
      side = Math.floor(side * Math.min(0.9, Math.sqrt(PICTURE_BYTES / length)));
    }
  } finally {
    image.close();
  }
  throw new Error(`${file.name} could not be made small enough to be kept (300 kB). Cut off what is not needed and try again.`);
}

async function drawnAgain(image: ImageBitmap, times: number, quality: number): Promise<Omit<LoadedPicture, 'isSmaller'>> {
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(image.width * times));
  canvas.height = Math.max(1, Math.round(image.height * times));
  const context = canvas.getContext('2d');
  if (!context) throw new Error('This browser cannot draw the picture.');
  // What is clear in the picture becomes paper.
  context.fillStyle = '#ffffff';
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.imageSmoothingQuality = 'high';
  context.drawImage(image, 0, 0, canvas.width, canvas.height);
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/webp', quality));
  // A browser that writes no WebP gives another kind.
  const made = blob?.type === 'image/webp' ? blob : await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg', quality));
  if (!made) throw new Error('This browser cannot make the picture smaller.');
  return { source: await dataAddress(made), width: canvas.width, height: canvas.height };
}

function dataAddress(blob: Blob): Promise<string> {
  return new Promise((done, fail) => {
    const reader = new FileReader();
    reader.onload = () => done(String(reader.result));
    reader.onerror = () => fail(reader.error ?? new Error('The picture cannot be read.'));
    reader.readAsDataURL(blob);
  });
}
