using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Structure.Laminates;

namespace PlankFit.Planking.Structure;

/// <summary>Stiffness, mass and bill of a bottom.</summary>
internal static class StructurePlanner
{
    public static StructurePlan Of(StructureSpec spec, StructureGround ground)
    {
        var maker = new PlyMaker(spec);
        List<Finding> findings = [.. StructureFindings.Of(spec, ground, maker)];
        bool isKnown = findings.All(f => f.Severity != Severity.Warning);
        ImmutableArray<StationStiffness> stations = isKnown
            ? [.. Stations(spec, ground, maker).OrderBy(s => s.Deadrise)]
            : [];
        if (isKnown && stations.IsEmpty)
        {
            findings.Add(
                new(
                    Severity.Warning,
                    "[structure]",
                    "no station has planks of every layer at the middle of its bottom: no stiffness is reckoned; give the table a station between stem and transom"
                )
            );
        }

        return new(spec, stations, MassPlanner.Of(ground), BillPlanner.Of(ground), [.. findings])
        {
            Constants = StructureConstants.Of(spec, ground, maker),
        };
    }

    private static IEnumerable<StationStiffness> Stations(
        StructureSpec spec,
        StructureGround ground,
        PlyMaker maker
    )
    {
        HullSurface hull = ground.Planked.Hull;
        foreach (StationOnHull station in hull.Stations)
        {
            // Where keel and chine end in one point across is in mm, and goes up to what there is of it.
            double upper = hull.Surface.UpperV(station.U);
            SurfacePoint keel = hull.Surface.At(station.U, 0),
                chine = hull.Surface.At(station.U, upper);
            Vec3 middle = hull.Surface.At(station.U, upper / 2).P;
            double?[] angles =
            [
                .. ground.Planked.PlankLayers.Select(l =>
                    PlankAngles.At(l, middle.X, Math.Abs(middle.Y))
                ),
            ];
            Vec3 girth = chine.P - keel.P;
            // Where keel and chine meet there is no panel.
            if (angles.Any(a => a is null) || Math.Abs(girth.Y) < 1)
            {
                continue;
            }

            ImmutableArray<double> lie = [.. angles.Select(a => a!.Value)];
            double? span = spec.SpanMm ?? WidestSpan(ground.Framing, station.Name);
            yield return new(
                station.Name,
                station.PositionMm,
                Math.Atan2(girth.Z, Math.Abs(girth.Y)) * 180 / Math.PI,
                lie,
                span,
                [
                    .. LaidUps
                        .Of(ground, maker, lie)
                        .Select(l =>
                            l with
                            {
                                DeflectionMm =
                                    span is { } mm && spec.PressureMPa is { } p
                                        ? Deflections.HeldPanelMm(
                                            p,
                                            mm,
                                            l.Laminate.BetweenStringers
                                        )
                                        : null,
                            }
                        ),
                ]
            )
            {
                Boards = LaidUps.Boards(ground, maker, lie),
            };
        }
    }

    /// <summary>Of the distances along the section between keel, stringers and chine the greatest, on the face under the outermost skin.</summary>
    private static double? WidestSpan(FramingPlan framing, string station)
    {
        if (
            framing.UnderOutermost is not { } face
            || face.Girths.FirstOrDefault(g => g.Station == station) is not { } girth
        )
        {
            return null;
        }

        double[] places =
        [
            0,
            .. face
                .Marks.Where(m =>
                    m.Of.Kind == FramingKind.Stringer && Math.Abs(m.XMm - girth.XMm) < 1
                )
                .Select(m => m.FromKeelMm)
                .Order(),
            girth.GirthMm,
        ];
        return places.Zip(places.Skip(1), (a, b) => b - a).Max();
    }
}
