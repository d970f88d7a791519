using CsCheck;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Planking;

/// <summary>Hulls by chance with a keel built up in layers, a lapping cloth, and readings of the hull as it stands, the two sides apart.</summary>
internal static class RandomBackbone
{
    /// <summary>Keels down to nothing among them, on which thick layers have no mitre.</summary>
    public static readonly Gen<Job> Any = CsCheck
        .Gen.Select(RandomHull.Gen, Keel, Readings)
        .Select((job, keel, readings) => Built(job, keel, readings));

    /// <summary>Keels of 25 mm and more a side.</summary>
    public static readonly Gen<Job> Gen = CsCheck
        .Gen.Select(
            RandomHull.Gen.Where(job =>
                job.Offsets.Find(job.Hull.Panel.Lower)!.HalfBreadthsMm.Max() >= 25
            ),
            Keel,
            Readings
        )
        .Select((job, keel, readings) => Built(job, keel, readings));

    private static Gen<(double Thick, int Side, double Lean, bool Lap, double Off)> Keel =>
        CsCheck.Gen.Select(
            CsCheck.Gen.Double[0.75, 1],
            CsCheck.Gen.Int[0, 2],
            CsCheck.Gen.Double[-8, 15],
            CsCheck.Gen.Bool,
            CsCheck.Gen.Double[-4, 4]
        );

    private static Gen<(bool Girths, bool Widths, double A, double B, int At)> Readings =>
        CsCheck.Gen.Select(
            CsCheck.Gen.Bool,
            CsCheck.Gen.Bool,
            CsCheck.Gen.Double[-6, 6],
            CsCheck.Gen.Double[-6, 6],
            CsCheck.Gen.Int[1, 2]
        );

    private static Job Built(
        Job job,
        (double Thick, int Side, double Lean, bool Lap, double Off) keel,
        (bool Girths, bool Widths, double A, double B, int At) readings
    )
    {
        KeelLayerSide side = keel.Side switch
        {
            0 => new KeelLayerSide.Plumb(),
            1 => new KeelLayerSide.SquareToPlank(),
            _ => new KeelLayerSide.Leaning(keel.Lean),
        };
        PlankLayerSpec[] planks = [.. job.Layers.OfType<PlankLayerSpec>()];
        var layers = job.Layers.ToBuilder();
        layers.Insert(
            1,
            new ClothLayerSpec("core cloth", 1) { Lap = keel.Lap ? new(120, null, null) : null }
        );
        job = job with
        {
            Layers = layers.ToImmutable(),
            Keel = KeelSpec.None with
            {
                Layers =
                [
                    .. planks.Select(
                        (p, i) =>
                            new KeelLayerSpec(
                                $"keel {i + 1}",
                                p.Name,
                                keel.Thick * p.ThicknessMm,
                                new KeelHalfWidth.Mitre(),
                                side
                            )
                    ),
                ],
            },
        };
        string near = job.Offsets.Stations[readings.At].Name,
            far = job.Offsets.Stations[^2].Name;
        return !readings.Girths && !readings.Widths
            ? job
            : job with
            {
                AsBuilt = Read(job, readings, near, far),
            };
    }

    /// <summary>Readings near what the bottom has: asked of it first, so that they are a builder's and not nonsense.</summary>
    private static AsBuiltSpec Read(
        Job job,
        (bool Girths, bool Widths, double A, double B, int At) readings,
        string near,
        string far
    )
    {
        AsBuiltSpec probe = AsBuiltSpec.None with { Girths = [new(near, Side.Port, 500)] };
        AsBuiltSpec standing = AsBuiltSpec.None;
        if (BottomPlanner.Plan(job).Plan is not { } plan)
        {
            return standing;
        }

        if (readings.Widths)
        {
            double At(string station) =>
                plan.Keel!.Layers[0].Stations.FirstOrDefault(s => s.Station == station)?.HalfWidthMm
                ?? 40;
            standing = standing with
            {
                KeelHalfWidths =
                [
                    new("keel 1", near, Side.Port, Math.Max(1, At(near) + readings.A)),
                    new("keel 1", far, Side.Port, Math.Max(1, At(far) + readings.B)),
                ],
            };
        }

        if (readings.Girths && BottomPlanner.Plan(job with { AsBuilt = probe }).Plan is { } probed)
        {
            double Drawn(string station) =>
                probed.AsBuilt!.Girths[Side.Port].First(g => g.Station == station).DrawnMm;
            standing = standing with
            {
                Girths =
                [
                    new(near, Side.Starboard, Drawn(near) + readings.A),
                    new(far, Side.Starboard, Drawn(far) + readings.B),
                ],
            };
        }

        return standing;
    }
}
