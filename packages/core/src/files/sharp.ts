import sharp from 'sharp';

// Files come once and are large: a cache would hold memory and open files for nothing. One thread a picture keeps
// the two cores of a small server free for everything else.
sharp.cache(false);
sharp.concurrency(1);

export { sharp };
