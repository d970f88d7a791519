using PlankFit.Draughting.Bodies;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.KeelCheck;

namespace PlankFit.Export.Keel;

/// <summary>
/// The keel's layers as bodies, both sides in one: as wide at their outer face as they are, their sides as they lean. The inner face is taken as deep below the outer
/// one as the layer is thick on the slope there, and so is off by the keel's curvature times the thickness squared: less than 0.1 mm on keels of boats.
/// </summary>
public static class KeelBodies
{
    public static IEnumerable<Body> Of(KeelPlan keel) =>
        keel.Layers.Select(Of).Where(b => !b.Triangles.IsEmpty);

    public static Body Of(KeelLayerPlan layer)
    {
        var port = layer.Between.Where(s => s.Side == Side.Port).ToDictionary(s => s.PositionMm);
        (KeelStation Starboard, KeelStation Port)[] rows =
        [
            .. layer
                .Between.Where(s =>
                    s.Side == Side.Starboard
                    && port.ContainsKey(s.PositionMm)
                    && s.PositionMm >= (layer.RunsOutAtMm ?? double.NegativeInfinity)
                )
                .Select(s => (s, port[s.PositionMm])),
        ];
        var made = new BodyMaking();
        Vec3[]? before = null;
        foreach ((KeelStation starboard, KeelStation other) in rows)
        {
            Vec3[] section = Section(layer.Spec, starboard, other);
            if (before is null)
            {
                made.Quad(section[0], section[1], section[2], section[3], -Vec3.UnitX);
            }
            else
            {
                for (int i = 0; i < 4; i++)
                {
                    int j = (i + 1) % 4;
                    made.Quad(before[j], before[i], section[i], section[j], -Vec3.UnitZ);
                }
            }

            before = section;
        }

        if (rows.Length > 1)
        {
            made.Quad(before![3], before[2], before[1], before[0], Vec3.UnitX);
        }

        return (rows.Length > 1 ? made : new()).Named($"keel: {layer.Spec.Name}") with
        {
            Kind = "keel",
            Told = [("keelLayer", layer.Spec.Name), ("thicknessMm", layer.Spec.ThicknessMm)],
        };
    }

    /// <summary>Outer edge to starboard, to port, inner edge to port, to starboard: counter-clockwise seen from forward.</summary>
    private static Vec3[] Section(KeelLayerSpec spec, KeelStation starboard, KeelStation port)
    {
        (Vec3 outer, Vec3 inner) = Edge(spec, starboard);
        (Vec3 portOuter, Vec3 portInner) = Edge(spec, port);
        return [outer, portOuter.MirroredInY(), portInner.MirroredInY(), inner];
    }

    private static (Vec3 Outer, Vec3 Inner) Edge(KeelLayerSpec spec, KeelStation at)
    {
        double slope = Math.Tan(double.DegreesToRadians(at.Angles.SlopeDegrees)),
            deep = spec.ThicknessMm * Math.Sqrt(1 + (slope * slope)),
            narrower = deep * Math.Tan(double.DegreesToRadians(at.Angles.BevelDegrees));
        return (
            new(at.PositionMm, Math.Max(0, at.HalfWidthMm), at.HeightMm),
            new(at.PositionMm, Math.Max(0, at.HalfWidthMm - narrower), at.HeightMm + deep)
        );
    }
}
