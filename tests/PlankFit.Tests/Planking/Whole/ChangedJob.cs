using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Trust;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Planking.Sheathing;
using PlankFit.Tests.Support.Chance;

namespace PlankFit.Tests.Planking.Whole;

/// <summary>A job with one thing or a few in it changed by chance, and what was.</summary>
internal static class ChangedJob
{
    private static readonly (string What, Func<Job, Draw, Job> Change)[] Changes =
    [
        ("name", (j, d) => j with { Name = j.Name + d.Whole(1, 9) }),
        ("units", (j, d) => j with { Units = d.OneOf(LengthUnit.Millimetre, LengthUnit.Inch) }),
        ("output", (j, _) => j with { Output = j.Output with { CardPictures = true } }),
        ("cell", Cell),
        ("offsets-are-to", (j, _) => j with { Hull = j.Hull with { OffsetsAreTo = Other(j) } }),
        ("angle", (j, d) => Layer(j, d, p => p with { AngleDegrees = d.Between(40, 52) })),
        ("width", (j, d) => Layer(j, d, p => p with { WidthMm = p.WidthMm * d.Between(0.8, 1) })),
        ("thickness", (j, d) => Layer(j, d, p => p with { ThicknessMm = p.ThicknessMm * 0.8 })),
        ("stagger", (j, d) => Layer(j, d, p => p with { Stagger = d.Between(0.3, 0.6) })),
        (
            "heads",
            (j, d) =>
                Layer(
                    j,
                    d,
                    p => p with { Heads = p.Heads == Heads.Aft ? Heads.Forward : Heads.Aft }
                )
        ),
        ("wood", (j, d) => Layer(j, d, p => p with { Species = "sitka-spruce" })),
        (
            "ends",
            (j, d) => j with { Ends = j.Ends with { Upper = EndRule.LeftLong(d.Between(5, 40)) } }
        ),
        ("limits", (j, _) => j with { Limits = j.Limits with { EdgeStrainPercent = 0.02 } }),
        ("no keel", (j, _) => j with { Keel = KeelSpec.None }),
        ("proud", (j, _) => j with { Keel = j.Keel with { ProudToleranceMm = 0.1 } }),
        ("left long", (j, d) => j with { Keel = j.Keel with { LeftLongMm = d.Between(10, 60) } }),
        ("no timber", (j, _) => j with { Timber = null }),
        (
            "timber",
            (j, d) =>
                j with
                {
                    Timber = TimberSpec.Default with
                    {
                        Species = "douglas-fir",
                        ClampSpacingMm = d.Between(200, 300),
                    },
                }
        ),
        ("no setting-up", (j, _) => j with { SettingUp = null }),
        (
            "ribbands",
            (j, d) =>
                j with
                {
                    SettingUp = j.SettingUp is { } s
                        ? s with
                        {
                            RibbandMm = d.Between(5, 30),
                        }
                        : null,
                }
        ),
        ("nothing behind", (j, _) => j with { Framing = [] }),
        (
            "behind",
            (j, d) =>
                j with
                {
                    Framing =
                    [
                        .. j.Framing.Select(b => b with { WidthMm = b.WidthMm + d.Between(0, 9) }),
                    ],
                }
        ),
        ("no joints", (j, _) => j with { Joints = null }),
        ("no fastenings", (j, _) => j with { Fastenings = null }),
        ("spacing", (j, d) => Fastened(j, w => w with { SpacingMm = d.Between(50, 120) })),
        ("edge", (j, d) => Fastened(j, w => w with { EdgeMm = d.Between(8, 20) })),
        (
            "spare",
            (j, d) =>
                j with
                {
                    Fastenings = j.Fastenings is { } f
                        ? f with
                        {
                            SparePercent = d.Between(0, 20),
                        }
                        : null,
                }
        ),
        (
            "trust",
            (j, d) => j with { Trust = new TrustSpec { FramesMadeWithinMm = d.Between(1, 3) } }
        ),
        ("no trust", (j, _) => j with { Trust = null }),
        (
            "cloth",
            (j, d) =>
                j.Layers.OfType<ClothLayerSpec>().FirstOrDefault() is { } layer
                    ? j with
                    {
                        Cloths = [SheathedJobs.Stitched],
                        Sheathing =
                        [
                            SheathedJobs.Usual(layer.Name) with
                            {
                                ExcessMm = d.Between(10, 40),
                            },
                        ],
                    }
                    : j
        ),
        ("no cloth", (j, _) => j with { Sheathing = [] }),
        ("glue", (j, d) => ChanceGlue.Added(j, d.Whole(1, 99))),
        ("structure", (j, d) => j with { Structure = new() { SpanMm = d.Between(150, 400) } }),
        ("no glue", (j, _) => j with { Glue = null }),
        ("nothing measured", (j, _) => j with { AsBuilt = AsBuiltSpec.None }),
        ("girths", (j, d) => Girths(j, d.Between(-3, 3))),
    ];

    public static (Job Job, string What) Of(Job job, Draw draw)
    {
        var what = new List<string>();
        int changes = draw.Whole(1, 3);
        for (int i = 0; i < changes; i++)
        {
            (string name, Func<Job, Draw, Job> change) = draw.OneOf(Changes);
            job = change(job, draw);
            what.Add(name);
        }

        return (job, string.Join(", ", what));
    }

    private static OffsetsAreTo Other(Job job) =>
        job.Hull.OffsetsAreTo == OffsetsAreTo.Inside ? OffsetsAreTo.Outside : OffsetsAreTo.Inside;

    private static Job Layer(Job job, Draw draw, Func<PlankLayerSpec, PlankLayerSpec> change)
    {
        PlankLayerSpec[] planks = [.. job.Layers.OfType<PlankLayerSpec>()];
        PlankLayerSpec one = draw.OneOf(planks);
        return job with
        {
            Layers = [.. job.Layers.Select(l => ReferenceEquals(l, one) ? change(one) : l)],
        };
    }

    private static Job Cell(Job job, Draw draw)
    {
        OffsetLine line = job.Offsets.Find(job.Hull.Panel.Upper)!;
        int at = draw.Whole(0, line.HeightsMm.Length - 1);
        OffsetLine moved = line with
        {
            HeightsMm = line.HeightsMm.SetItem(at, line.HeightsMm[at] + draw.Between(-2, 2)),
        };
        return job with
        {
            Offsets = job.Offsets with { Lines = job.Offsets.Lines.Replace(line, moved) },
        };
    }

    private static Job Fastened(Job job, Func<FasteningSettings, FasteningSettings> change) =>
        job with
        {
            Fastenings = job.Fastenings is { } f ? f with { Usual = change(f.Usual) } : null,
        };

    private static Job Girths(Job job, double mm) =>
        job with
        {
            AsBuilt = job.AsBuilt with
            {
                Girths = [.. job.AsBuilt.Girths.Select(g => g with { Mm = g.Mm + mm })],
            },
        };
}
