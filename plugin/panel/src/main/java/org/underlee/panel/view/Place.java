package org.underlee.panel.view;

/** The places that can be gone to. */
enum Place {
  PICTURE("the picture in 3-D", "mdi2c-cube-outline", "Shortcut+1"),
  PLAN("the plan", "mdi2f-floor-plan", "Shortcut+2"),
  SECTION("the section through the bay", "mdi2c-content-cut", "Shortcut+3"),
  FINDINGS("the findings", "mdi2a-alert-outline", "Shortcut+4"),
  TAKEOFF("the takeoff", "mdi2t-table", "Shortcut+5"),
  WATER("the water", "mdi2w-water-outline", "Shortcut+6"),
  SERVICES("issues with services", "mdi2p-pipe", "Shortcut+8"),
  OPTIONS("the arrangements side by side", "mdi2s-scale-balance", "Shortcut+9"),
  OUTLINE("the outline", "mdi2f-file-tree-outline", "Shortcut+7"),
  CHANGES("what a new export has changed", "mdi2c-compare", "Shortcut+0");

  private final String words;
  private final String icon;
  private final String keys;

  Place(String words, String icon, String keys) {
    this.words = words;
    this.icon = icon;
    this.keys = keys;
  }

  String words() {
    return words;
  }

  String icon() {
    return icon;
  }

  String keys() {
    return keys;
  }
}
