/** One hand for every drawing: ink on paper, one signal colour, and never colour alone. */
export const ink = '#10202f';
export const muted = '#4b5867';
export const hairline = '#c4bdae';
export const paper = '#ffffff';
export const signal = '#c84300';
export const wash = '#f1ece0';

/** Line weights in px at the drawing's own size: outlines, then what supports them. */
export const outline = 1.5;
export const fine = 0.75;

/** A drawing's usual width; text at 12 px is then 8 pt on a page of 170 mm. */
export const fullWidth = 640;
