import type { Job, Underlay } from '../../graph/document.ts';
import { memoise } from '../../graph/memo.ts';
import { digestOf } from './cards.ts';

/** What stands in the place of a picture that lies elsewhere: it reads as a picture, and names the one that is meant. */
const reference = 'data:image/kept,';

/** A picture may have millions of characters, and an edit leaves most underlays as they were. */
const pictureDigest = memoise(({ image }: Underlay) => digestOf(image));

/** The job with a short reference in the place of each picture that `lies` elsewhere. */
export function withoutPictures(job: Job, lies: (image: string) => boolean): Job {
  const underlays = job.underlays.map((underlay) =>
    lies(underlay.image) ? { ...underlay, image: reference + pictureDigest(underlay) } : underlay,
  );
  return { ...job, underlays };
}

/** Digests of the pictures that the job only refers to. */
export function referredTo({ underlays }: Job): string[] {
  return underlays.flatMap(({ image }) =>
    image.startsWith(reference) ? [image.slice(reference.length)] : [],
  );
}

/** The pictures that the job holds itself, by their digest. */
export function picturesIn({ underlays }: Job): Map<string, string> {
  const own = underlays.filter(({ image }) => !image.startsWith(reference));
  return new Map(own.map((underlay) => [pictureDigest(underlay), underlay.image]));
}

/** The job with its pictures again; an underlay whose picture is nowhere to be found is left out. */
export function withPictures(job: Job, pictures: ReadonlyMap<string, string>): Job {
  if (referredTo(job).length === 0) return job;
  const underlays = job.underlays.flatMap((underlay) => {
    if (!underlay.image.startsWith(reference)) return underlay;
    const image = pictures.get(underlay.image.slice(reference.length));
    return image === undefined ? [] : { ...underlay, image };
  });
  return { ...job, underlays };
}
