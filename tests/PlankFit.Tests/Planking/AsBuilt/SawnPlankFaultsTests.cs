using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Planking.Keel;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.AsBuilt;

/// <summary>A record of sawn planks is believed where it holds together and refused for each single figure or point that cannot be.</summary>
public sealed class SawnPlankFaultsTests
{
    private static readonly Lazy<BottomPlan> Plan = new(() =>
        WholeBottomTests.Planned(PlaneBottom.Job(20, 0, 9, 1, OffsetsAreTo.Inside))
    );

    private static readonly (string Why, Func<SawnPlank, SawnPlank> Spoilt)[] Spoils =
    [
        ("its length is given", p => p.Sized(s => s with { NetLengthMm = 0 })),
        ("its length is given", p => p.Sized(s => s with { NetLengthMm = double.NaN })),
        ("its length to saw is given", p => p.Sized(s => s with { CutLengthMm = 100_001 })),
        ("its greatest width", p => p.Sized(s => s with { WidestMm = -1 })),
        ("its angle at the keel", p => p.Sized(s => s with { KeelAngleDegrees = 181 })),
        ("its area is given", p => p.Sized(s => s with { AreaMm2 = 0 })),
        ("its area is not", p => p.Sized(s => s with { AreaMm2 = s.AreaMm2 * 1.00013 })),
        ("its area is not", p => p.Sized(s => s with { AreaMm2 = s.AreaMm2 * 0.99987 })),
        (
            "its length to saw is not",
            p => p.Sized(s => s with { CutLengthMm = s.CutLengthMm + 0.06 })
        ),
        (
            "its length to saw is not",
            p => p.Sized(s => s with { CutLengthMm = s.CutLengthMm - 0.06 })
        ),
        (
            "an edge of it is not whole",
            p =>
                p.Shaped(s =>
                    s with
                    {
                        Forward = s.Forward with { ShapeWord = PlankEdge.None.ShapeWord },
                    }
                )
        ),
        (
            "an edge of it is not whole",
            p => p.Shaped(s => s with { After = s.After with { Flat = s.After.Flat.RemoveAt(1) } })
        ),
        (
            "the thickness of its layer",
            p => p with { SawnFor = p.SawnFor! with { ThicknessMm = 0 } }
        ),
        (
            "beyond any boat",
            p => p.Shaped(s => s with { Outline = s.Outline.SetItem(0, new(1, 300_000, 0)) })
        ),
        (
            "beyond any boat",
            p => p.Shaped(s => s with { FlatCut = s.FlatCut.SetItem(0, new(299_999, 1)) })
        ),
        (
            "beyond any boat",
            p => p.Shaped(s => s with { FlatNet = s.FlatNet.SetItem(0, new(1, -300_000)) })
        ),
        ("fewer than three", p => p.Shaped(s => s with { FlatCut = [.. s.FlatCut.Take(2)] })),
        ("different numbers", p => p.Shaped(s => s with { FlatNet = s.FlatNet.RemoveAt(0) })),
        ("it has no ends", p => p.WithoutEnds()),
        (
            "the angle or a bevel",
            p => p.Ended(e => e with { Angles = e.Angles with { CutDegrees = 0 } })
        ),
        (
            "the angle or a bevel",
            p => p.Ended(e => e with { Angles = e.Angles with { CutDegrees = 180 } })
        ),
        (
            "the angle or a bevel",
            p => p.Ended(e => e with { Angles = e.Angles with { BevelDegrees = 90 } })
        ),
        (
            "the angle or a bevel",
            p => p.Ended(e => e with { Angles = e.Angles with { BevelDegrees = -90.5 } })
        ),
        (
            "the angle or a bevel",
            p => p.Ended(e => e with { Angles = e.Angles with { BevelAtLeastN = 90.5 } })
        ),
        (
            "the angle or a bevel",
            p => p.Ended(e => e with { Angles = e.Angles with { BevelAtGreatestN = -90 } })
        ),
        ("was left long by", p => p.Ended(e => e with { AllowanceMm = -0.1 })),
        ("was left long by", p => p.Ended(e => e with { OverhangMm = -0.1 })),
        (
            "was left long by",
            p => p.Ended(e => e with { Cut = EndCut.LeftLong, OverhangMm = null })
        ),
        (
            "is not whole",
            p => p.Ended(e => e with { Lines = e.Lines with { Outer = [e.OuterLine[0]] } })
        ),
        (
            "is not whole",
            p => p.Ended(e => e with { Lines = e.Lines with { Outline = e.Outline.RemoveAt(0) } })
        ),
        (
            "beyond any boat",
            p =>
                p.Ended(e =>
                    e with
                    {
                        Lines = e.Lines with { Inner = e.InnerLine.SetItem(0, new(0, 300_000)) },
                    }
                )
        ),
        (
            "do not meet",
            p =>
                p.Shaped(s =>
                    s with
                    {
                        Forward = s.Forward with
                        {
                            Seam = s.Forward.Seam.SetItem(0, s.Forward.Seam[0] + new Vec3(0, 9, 0)),
                        },
                    }
                )
        ),
        (
            "do not meet",
            p =>
                p.Shaped(s =>
                    s with
                    {
                        After = s.After with
                        {
                            Flat = s.After.Flat.SetItem(0, s.After.Flat[0] + new Vec2(0.06, 0)),
                        },
                    }
                )
        ),
        (
            "a side of its outline",
            p =>
                p.Shaped(s =>
                    s with
                    {
                        Outline = s.Outline.Insert(1, 0.5 * (s.Outline[0] + s.Outline[1])),
                        FlatNet = s.FlatNet.Insert(1, (0.9 * s.FlatNet[0]) + (0.1 * s.FlatNet[1])),
                    }
                )
        ),
        (
            "crosses itself",
            p =>
                p.Shaped(s =>
                    s with
                    {
                        // Two corners of opposite ends change places: next to each other they need not cross, where one of them is hollow.
                        FlatCut = s
                            .FlatCut.SetItem(1, s.FlatCut[s.FlatCut.Length / 2])
                            .SetItem(s.FlatCut.Length / 2, s.FlatCut[1]),
                    }
                )
        ),
    ];

    public static TheoryData<int> Each => [.. Enumerable.Range(0, Spoils.Length)];

    [Fact]
    public void PlanksAsLaidOutHaveNoFault() =>
        Assert.All(
            Plan.Value.PlankLayers.SelectMany(l => l.Starboard.Concat(l.Port)),
            p =>
                Assert.Null(
                    SawnPlankFaults.Of(RecordsOfSawn.Of(Plan.Value, p.Id), LengthUnit.Millimetre)
                )
        );

    [Theory]
    [MemberData(nameof(Each))]
    public void AFigureThatNoPlankHasIsNamed(int at)
    {
        SawnPlank sound = RecordsOfSawn.Of(Plan.Value, "S1-20");
        string? fault = SawnPlankFaults.Of(Spoils[at].Spoilt(sound), LengthUnit.Millimetre);
        Assert.True(fault is not null, Spoils[at].Why);
        Assert.Contains(Spoils[at].Why, fault, StringComparison.Ordinal);
    }

    /// <summary>What rounding in a record may do is borne: the area to a ten-thousandth, a length to 0.05 mm, and a bevel just under a right angle.</summary>
    [Fact]
    public void WhatARecordMayRoundIsBorne()
    {
        SawnPlank sound = RecordsOfSawn.Of(Plan.Value, "S1-20");
        Assert.True(sound.Form.Sizes.AreaMm2 > 50_000);
        Assert.Null(
            SawnPlankFaults.Of(
                sound
                    .Sized(s =>
                        s with
                        {
                            AreaMm2 = s.AreaMm2 * 1.00009,
                            CutLengthMm = s.CutLengthMm + 0.04,
                        }
                    )
                    .Ended(e =>
                        e with
                        {
                            Angles = e.Angles with { BevelDegrees = 89.9, BevelAtLeastN = -89.9 },
                        }
                    ),
                LengthUnit.Millimetre
            )
        );
    }

    /// <summary>What is amiss is told in what the job shows: 100,001 mm are 328'-1 1/16", and no thickness is 0.</summary>
    [Theory]
    [InlineData("its length to saw is given", "328'-1 1/16\"")]
    [InlineData("a side of its outline", "\" long on the hull and")]
    [InlineData("the thickness of its layer", "given as 0\"")]
    public void LengthsAreToldAsTheJobShowsThem(string why, string told)
    {
        SawnPlank sound = RecordsOfSawn.Of(Plan.Value, "S1-20");
        string[] faults =
        [
            .. Spoils
                .Where(s => s.Why.StartsWith(why, StringComparison.Ordinal))
                .Select(s => SawnPlankFaults.Of(s.Spoilt(sound), LengthUnit.Foot)!),
        ];
        Assert.NotEmpty(faults);
        Assert.All(
            faults,
            f =>
            {
                Assert.Contains(told, f, StringComparison.Ordinal);
                Assert.DoesNotContain(" mm", f, StringComparison.Ordinal);
            }
        );
    }
}
