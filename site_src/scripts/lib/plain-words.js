// Everyday words that are no misspelt ones of the trade, though they are near some: a lonely swimmer asks for no lane, and a snack is no smack. They are told as
// words that nothing has. Written by hand; a word that a wet thumb makes of one of the trade, "spirit" of "sprint", is none of them.

import { stems } from "./words.js";

/** By the terms that they are compared by. */
export const PLAIN = new Set(stems(
  "actor actress affair anger army bake bank barn basket beach beard beef beer bible bill bird bitcoin bitter blanket blaze blender bless " +
  "blonde blouse bond bonus border boss bowl brain branch breakfast bride brown budget buggy bullet burger bush cable cafe cage cake calorie " +
  "camel canal candy cannon captain career carpet carrot cart cartoon cash castle cave cell central century cereal charger charity cheese chef " +
  "cherry chess chicken china chocolate choir church city clay clever client climate clone clown clue coal coat coffin comedy comic copper " +
  "cottage cotton couch cousin crab craft crane create creatine credit cricket crime cube curtain dairies dairy daisy dawn debt decade " +
  "deer delight demand desert devil diet dinner dish dismiss display divorce dollar donkey donut dough dragon drawer dream " +
  "driver drone drug earth escape evil factory fairy farm farmer feast feather fiction flame flavour flour flower folder folk " +
  "football forest fork fortune forum freckle freedom freezer french fuel garden ghost glitter glove glue goat gold grace grain " +
  "grape grass greet grief guilt guitar gum halloween hamster happy harbour harvest heaven hedge herb hobby hockey hoist hoop hoover horn " +
  "horror humour hunt hut idol image impact india ink insect insult insurance invest iron island jail jeans journey jug jury justice keen " +
  "keyboard king kiss kite kitten knight knit lamb laptop laser lawn lawyer leather lecture lettuce linen lipstick litter liver " +
  "loan locker logic lonely lottery lounge love lover loyal luck magnet maid mail mall mango market marriage material meat membership " +
  "metal midnight mill mint miracle modern monkey monster moon movie mug murder museum mystery napkin network newspaper nice niece noon north " +
  "novel nun oak oath opera orbit oven owl paint parade parcel parrot passport pasta pastry payment peace peach pear pepper perfume pet picnic " +
  "pig pilot pint planet player plot plum poet poison poker polite politics polo pony popcorn pork port poster pottery powder " +
  "prayer president priest prince prison project proof proper protein protest pudding puppet purse pushchair racket radio rainbow receipt " +
  "refuge regret religion rent repair reply ribbon river robber route rug safari sailor salary salmon salon salt satan sausage scald " +
  "scarf scout seed seek seller series serious sew shave sheep shell shine shock shop silk silver singer skate sketch skirt slave sleeve " +
  "smart smile snack snail soap soccer sofa soil solid son song soup spade speaker speech spider sponge spoon spy steak steal steel stew stock " +
  "stove straw supper supplements supply swan sweet sword tailor talent tax taxi terror thank theatre throne tide tiger toast token topic torch " +
  "tourist town tree truck trumpet tunnel turkey union urgent valley vase vegan vest village vine visa wallet wax whale wheat whine whisky " +
  "wicked wife window wine wolf woman yogurt",
));
