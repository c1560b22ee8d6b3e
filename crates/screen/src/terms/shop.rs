//! Terms of making.

use super::terms;

terms! { SHOP:
    TAB = "Tab", "A plate with a hole, welded to the frame, that holds a bolt.", "", "";
    GUSSET = "Gusset", "A plate that stiffens the corner between two others.", "", "";
    BOXING_PLATE = "Boxing plate", "A plate that joins a pair of tabs into a box, so that they don't bend sideways.", "", "Mock everything up and run the travel before boxing.";
    KERF = "Kerf", "Width of the material that a saw or a cutter takes away.", "inch or mm", "";
    EDGE_DISTANCE = "Edge distance", "From the centre of a hole to the nearest edge of the plate.", "inch or mm", "More than 1.5 hole diameters is common.";
    LEAST_MEASURE = "Least measure", "A dimension of a bracket beside the least that it should have, with where that least comes from.", "inch or mm", "At or above the least.";
    ROUNDING = "What rounding costs", "The toe curve's figures with every printed coordinate rounded to the shop's step.", "degrees", "Near the figures as drawn is better; else choose a finer step.";
    FIXTURE = "Fixture sheet", "Coordinates and check diagonals of the points, to set them up on a jig.", "inch or mm", "";
    STOCK = "Stock", "The bar, tube or plate that a part is cut from.", "", "";
    TEMPLATE = "Template", "A drawing at full size to glue on the metal and centre-punch through.", "", "Measure its check bars before it is used.";
}
