export const planUsage =
  'use: npm run --silent plan -- PHOTO [--sheet 381x279] [--bands 4] [--palette 5] [--paints id,id|FILE.json] [--evening MINUTES] [--dryer] [--washes N] [--paper GSM[,FIBRE]] [--subject "X,Y X,Y X,Y"] [--passages ground-first|subject-first|together] [--out DIR]';

/** What --help prints. */
export const planHelp = `${planUsage}
  PHOTO            a picture file: JPEG, PNG, WebP
  --sheet WxH      sheet in mm, turned to the photo
  --bands N        value bands, 2 to 7
  --palette N      at most N paints, 1 to 7
  --paints id,id   ids of built-in paints: used as they are, or chosen from where they are more than the palette holds
  --paints FILE.json   likewise paints of your own: { "paints": [{ "id", "name", "ci": ["PB29"], "K": [36 numbers], "S": [36 numbers], "properties"?: {...} }] }
  --evening N      minutes for one evening, 10 to 600: the plan is made to fit them
  --dryer          a hair dryer is at hand
  --washes N       at most N washes over each other, 1 to 8
  --paper GSM      paper in g/m2, also GSM,cotton or GSM,cellulose; 300,cotton when left out
  --subject "X,Y X,Y X,Y"   places of a loose loop round the subject, at least three, 0 to 1 from left and top of the photo as it is cropped
  --passages ORDER   ground-first, subject-first or together instead of the proposed order; only with --subject
  --out DIR        writes pictures there
One JSON object on stdout; a wrong option or file is one line on stderr, exit code 2. Details: DEVELOPERS.md, The plan command.
`;
