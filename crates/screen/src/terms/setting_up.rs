//! Terms of setting up.

use super::terms;

terms! { SETTING_UP:
    READING = "Reading", "Toe change read off the finished vehicle at one place of the wheel. The word in or out says which way.", "degrees, or what the gauge shows", "";
    EXPECTED = "Expected reading", "What should be read after the move.", "degrees, in or out", "Nearer to 0 is better.";
    DEVIATION = "One deviation", "How far a figure may be off: two of three times it lies within this either way.", "of the figure's own unit", "Smaller is surer.";
    NEXT_MOVE = "Next move", "What to turn or shim next so that the toe curve comes nearest to flat, in whole turns, flats, washers or shims.", "", "Change one thing, read again.";
    CHANCE = "Chance that it will do", "How often, of builds that fit the readings, the toe change stays within the limit after the move.", "per cent", "More is better.";
    FLAT = "Flat", "A sixth of a turn of a hexagon nut or rod.", "turns", "";
    CASTOR_SWEEP = "Castor sweep", "Camber read with the wheel steered out and in by the same angle; the difference tells the castor.", "degrees", "";
    CORNER_WEIGHT = "Corner weight", "What one wheel presses on the ground.", "lbf, N or kg", "Left and right alike steer alike.";
    TAPE_SURVEY = "Tape survey", "Coordinates of points worked out from tape distances to marks.", "inch or mm", "A tape more than is needed finds the one that is wrong.";
    STATIC_TOE = "Static toe", "Toe at rest at the design height. Turning the tie rod sets it; that does not cure toe change. Positive: in.", "degrees", "";
    TOTAL_TOE = "Total toe", "Sum of the toe of both wheels of an axle. Positive: in.", "degrees, or a length across the tyres", "";
}
