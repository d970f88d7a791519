using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Overlay;
using NetTopologySuite.Operation.OverlayNG;
using Geo = NetTopologySuite.Geometries.Geometry;

namespace PlankFit.Tests.Support;

/// <summary>
/// What two shapes have in common, and what is left of one: by the library's robust overlay, since the one behind its plain calls gives up where sides all but
/// coincide, as those of boards and kerfs do.
/// </summary>
internal static class RobustOverlay
{
    /// <summary>
    /// Points on a grid of a millionth of a millimetre: of two triangles on either side of one line, whose ends differ in the last digit of a double, the overlay
    /// without a grid has one of them whole for what they have in common.
    /// </summary>
    private static readonly PrecisionModel Grid = new(1e6);

    public static Geo Common(this Geo a, Geo b) =>
        OverlayNG.Overlay(a, b, SpatialFunction.Intersection, Grid);

    public static Geo Without(this Geo a, Geo b) =>
        OverlayNGRobust.Overlay(a, b, SpatialFunction.Difference);
}
