/** What will happen because of a change of hers, by what it breaks (rules R1 to R21). */
export const consequenceSentences = {
  'ready/not-fixed': () => 'The first wash goes on a sheet that is not fixed: it buckles.',
  'ready/not-mixed': () =>
    'The first wash begins before its colours are mixed: it dries while you mix.',
  'ready/pencil-late': () => 'Pencil over a wash can not be rubbed out any more.',
  'line/back': ({ passage }: { readonly passage: string }) =>
    `You go back to the ${passage} after painting up to its line: it must be cut round once more, and a slip shows.`,
  'line/unsaid': () =>
    'Nothing is said of the line between background and subject: paint only up to it.',
  'mix/many-paints': () => 'More than three paints in one puddle turn to mud.',
  'mix/many-parts': () =>
    'So many parts can not be measured by eye: the puddle comes out differently each time.',
  'mix/many-puddles': ({ puddles }: { readonly puddles: number }) =>
    `${puddles} puddles in one wash: while you reach for one another dries, and the brush dirties them all.`,
  'plain/spots': () => 'Here the shapes are plain: spots on them look like an accident.',
  'last/over-lights': () =>
    'The last lights stand already: this stains them or drags the white about.',
  'last/blade': () => 'A blade cuts: scrape away from the hand.',
  'last/after-look': () => 'Painting goes on after this look: what comes then is judged by nobody.',
  'step/incomplete': () => 'Something is missing in this step: take your last change back.',
  'order/light-over-dark': () =>
    'A lighter wash goes over darks that lie there already: it loosens them and they smear into it.',
  'order/lightens': () =>
    'This paint covers what lies below and makes it lighter and chalky instead of deeper.',
  'order/large-late': () => 'A large wash after smaller ones runs over their edges and blurs them.',
  'order/touches-early': () =>
    'A wash still goes over these touches: they smear and lose their edge.',
  'order/layers': ({ layer, bears }: { readonly layer: number; readonly bears: number }) =>
    `This is layer ${layer} over the same shapes, and this paper bears ${bears}: it roughens, what lies below comes loose, and colours turn dull.`,
  'order/more-washes-than-values': () =>
    'There are more washes than values here: the last one only overworks the paper.',
  /** `values`: at least 1, to the half. */
  'value/missed': ({ values, lighter }: { readonly values: number; readonly lighter: boolean }) =>
    `Some of these shapes end about ${values === 1 ? 'one value' : `${values} values`} ${lighter ? 'lighter' : 'darker'} than planned.`,
  'wet/prepare': () => 'The sheet is moved while it is wet: the paint runs.',
  'wet/puddles': () => 'The sheet is not left to dry by itself: keep your hands off it meanwhile.',
  'wet/transfer': () => 'A pencil on damp paper cuts into it, and the line stays.',
  'wet/mask': () =>
    'On damp paper the masking fluid soaks in and tears the sheet when it comes off.',
  'wet/unmask': () => 'Rubbed off a damp sheet the mask tears the paper.',
  'wet/lift': () =>
    'The sheet is still damp: what you wet runs back in with a cauliflower (backrun).',
  'wet/splatter': () => 'The sheet is still wet: the spots spread into soft blots.',
  'wet/details': () => 'The sheet is still wet: small shapes spread and lose their form.',
  'wet/accents': () => 'The sheet is still wet: these touches run and dry pale and soft.',
  'wet/last-lights': () => 'The sheet is still damp: the white sinks in and goes grey.',
  'wet/last-look': () =>
    'Wet paint looks darker than it dries: what you judge now is not what you get.',
  'wet/thin-wash': () =>
    'Thin paint goes into a wash that is not dry: it pushes the colour away in cauliflowers (backruns).',
  'wet/wash': () =>
    'It goes into a wash that is not dry: colours run together, edges are lost, and it turns to mud.',
  'paper/damp': () => 'On damp paper paint runs unevenly and leaves cauliflowers (backruns).',
  'paper/wet': () => 'On wet paper this paint spreads: no edge stays where you put it.',
  'paper/dry': () => 'On dry paper the colours do not run: every stroke keeps a hard edge.',
  'one-go/thinner': () =>
    'In one go the second colour is the wetter one: it pushes the first away in cauliflowers (backruns).',
  'one-go/runs': () =>
    'In one go the darker colours run into the lighter ones: no crisp edge stays between them.',
  'edges/crisp-on-wet': () => 'On wet paper the crisp edges of these shapes run and come out soft.',
  'edges/soft-on-dry': () =>
    'Most edges here are soft: on dry paper they dry hard unless you soften each one at once.',
  'glaze/thick': () =>
    'Paint this thick covers like a skin: nothing below shines through the glaze.',
  'lift/nothing': () => 'There is no paint to lift here yet.',
  'lift/stains': () =>
    'Staining paint lies here: it only gets paler in patches and does not come out.',
  'lift/closed': () => 'A wash still goes over the lifted lights and closes them again.',
  'wet/again': () =>
    'Wetting it again loosens the paint below, which lifts easily: it goes patchy.',
  'mask/late': () =>
    'A wash has gone over these whites already: masking comes too late to keep them.',
  'mask/on-wet': () =>
    'On wet paper the masking fluid soaks in and tears the sheet when it comes off.',
  'mask/stays': () =>
    'The mask stays on: the longer it does, the more it clings, and it can tear the paper.',
  'mask/none': () =>
    'Nothing is masked by then: there is no mask to take off, and whites not painted round are lost.',
  'mask/off-damp': () =>
    'Rubbed off a damp sheet the mask tears the paper and smears the paint into the whites.',
  'mask/wash-after': () =>
    'A wash still comes: it floods these whites unless you paint round every one.',
  'white/lost': () => 'Paint goes over a white here: that white is lost.',
  'white/small-in-wet': ({ count }: { readonly count: number }) =>
    `On wet paper the paint runs into the ${count} small whites: mask them first, or bring them back at the end.`,
};
