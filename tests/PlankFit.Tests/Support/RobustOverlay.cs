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
    public static Geo Common(this Geo a, Geo b) =>
        OverlayNGRobust.Overlay(a, b, SpatialFunction.Intersection);

    public static Geo Without(this Geo a, Geo b) =>
        OverlayNGRobust.Overlay(a, b, SpatialFunction.Difference);
}
