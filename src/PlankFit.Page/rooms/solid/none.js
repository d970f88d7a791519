// Stands in the place of the bundle where the program was built without Node.

export const why =
  "The picture is drawn by the shop's computer. Built where Node is installed, this page turns it in the browser itself.";

export const canDraw = () => false;
