using System.Collections.Immutable;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Layers;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Joints;

/// <summary>The rules of stagger as their sources give them, which of them hold in a job, and what each forbids, by hand.</summary>
public sealed class JointRuleTests
{
    /// <summary>Great Lakes underwriters' rules of 1866 (read): 5 ft, 4 ft with a strake between, three strakes between on one timber. The layer below: proposals.</summary>
    [Fact]
    public void ButtsHaveTheUnderwritersRules() =>
        Assert.Equal(
            [
                (JointRuleKind.NextPlank, 1524, null),
                (JointRuleKind.OneBetween, 1219.2, null),
                (JointRuleKind.SameBacking, null, 3),
                (JointRuleKind.JointsBelow, 150, null),
                (JointRuleKind.SeamsBelow, 25, null),
            ],
            JointRules
                .OnFrames(JointKind.Butt)
                .Select(r =>
                    (r.What, r.DistanceMm is { } d ? Math.Round(d, 9) : (double?)null, r.Count)
                )
        );

    /// <summary>Old Lloyd's yacht rules, second hand: 1.2 m, three complete planks between in one transverse plane (within 100 mm: a proposal).</summary>
    [Fact]
    public void ScarfsHaveTheYachtRules() =>
        Assert.Equal(
            [
                (JointRuleKind.NextPlank, 1200, null),
                (JointRuleKind.SameBacking, 100, 3),
                (JointRuleKind.JointsBelow, 150, null),
                (JointRuleKind.SeamsBelow, 25.0, (int?)null),
            ],
            JointRules.OnFrames(JointKind.Scarf).Select(r => (r.What, r.DistanceMm, r.Count))
        );

    /// <summary>A rule of the job's own takes the place of the usual one of its kind, and one of nothing takes it away.</summary>
    [Fact]
    public void TheJobsOwnRulesTakeThePlaceOfTheUsual()
    {
        var spec = new JointSpec(
            null,
            ImmutableDictionary<string, JointStock>.Empty,
            [
                new(JointRuleKind.SeamsBelow, 40, null, "test"),
                new(JointRuleKind.OneBetween, 0, null, "test"),
                new(JointRuleKind.SameBacking, null, 1, "test"),
            ]
        );
        Assert.Equal(
            [
                (JointRuleKind.NextPlank, 1524, null),
                (JointRuleKind.SameBacking, null, 1),
                (JointRuleKind.JointsBelow, 150, null),
                (JointRuleKind.SeamsBelow, 40.0, (int?)null),
            ],
            spec.RulesFor(Stock, Layer, 1).Select(r => (r.What, r.DistanceMm, r.Count))
        );
    }

    /// <summary>
    /// Our own, since no builder's figures are known: stock of 120 mm asks for 240 mm to the next plank's butts and 120 to those below; scarfs of 16 mm at 16:1
    /// are 256 mm long, and as far from each other.
    /// </summary>
    [Fact]
    public void LayersGluedOnEachOtherHaveRulesByTheStocksWidth()
    {
        Assert.Equal(
            [
                (JointRuleKind.NextPlank, 240, null),
                (JointRuleKind.JointsBelow, 120, null),
                (JointRuleKind.SeamsBelow, 25.0, (int?)null),
            ],
            Usual.RulesFor(Stock, Layer, 2).Select(r => (r.What, r.DistanceMm, r.Count))
        );
        Assert.Equal(
            [
                (JointRuleKind.NextPlank, 256.0),
                (JointRuleKind.JointsBelow, 120),
                (JointRuleKind.SeamsBelow, 25),
            ],
            Usual
                .RulesFor(
                    Stock with
                    {
                        Kind = JointKind.Scarf,
                        ScarfRatio = 16,
                    },
                    Layer with
                    {
                        ThicknessMm = 16,
                    },
                    3
                )
                .Select(r => (r.What, r.DistanceMm!.Value))
        );
        Assert.All(
            Usual.RulesFor(Stock, Layer, 2),
            r => Assert.Equal("proposal, no source", r.Source)
        );
    }

    /// <summary>The number of layers settles whose rules hold, unless the job says it.</summary>
    [Theory]
    [InlineData(null, 1, Skin.OnFrames)]
    [InlineData(null, 2, Skin.GluedLayers)]
    [InlineData(Skin.OnFrames, 3, Skin.OnFrames)]
    [InlineData(Skin.GluedLayers, 1, Skin.GluedLayers)]
    public void TheSkinSettlesWhoseRulesHold(Skin? said, int layers, Skin skin)
    {
        JointSpec spec = Usual with { Skin = said };
        Assert.Equal(skin, spec.SkinOf(layers));
        Assert.Equal(
            skin == Skin.OnFrames ? 1524 : 240,
            spec.RulesFor(Stock, Layer, layers)[0].DistanceMm!.Value,
            1e-9
        );
    }

    private static readonly JointSpec Usual = new(
        null,
        ImmutableDictionary<string, JointStock>.Empty,
        []
    );

    private static readonly JointStock Stock = new(
        1500,
        300,
        JointKind.Butt,
        8,
        ButtCut.Square,
        JointStock.Carrying,
        null,
        15,
        50,
        []
    );

    private static readonly PlankLayerSpec Layer = new(
        "inner",
        6,
        new(120, 1),
        PrismaticPlan.Build(new Prism()).Job.Layers.OfType<PlankLayerSpec>().First().Law
    );

    [Theory]
    [InlineData(JointRuleKind.NextPlank, 100.0, null, 1, false)]
    [InlineData(JointRuleKind.OneBetween, 100.0, null, 2, false)]
    [InlineData(JointRuleKind.SameBacking, null, 3, 3, false)]
    [InlineData(JointRuleKind.SameBacking, 100.0, null, 0, true)]
    [InlineData(JointRuleKind.SameBacking, 100.0, 0, 0, true)]
    [InlineData(JointRuleKind.JointsBelow, 150.0, null, 0, false)]
    [InlineData(JointRuleKind.SeamsBelow, 25.0, null, 0, false)]
    [InlineData(JointRuleKind.SeamsBelow, 0.0, null, 0, true)]
    public void ARuleReachesSoManyPlanks(
        JointRuleKind what,
        double? mm,
        int? count,
        int reach,
        bool none
    )
    {
        var rule = new JointRule(what, mm, count, "test");
        Assert.Equal(reach, rule.Reach);
        Assert.Equal(none, rule.IsNone);
    }

    /// <summary>Joints 300 mm apart along the planks and 90 mm along the boat. Where both are on timbers with names, the names alone count.</summary>
    [Theory]
    [InlineData(JointRuleKind.NextPlank, 301.0, null, 1, false, false)]
    [InlineData(JointRuleKind.NextPlank, 300.0, null, 1, false, true)]
    [InlineData(JointRuleKind.NextPlank, 301.0, null, 2, false, true)]
    [InlineData(JointRuleKind.OneBetween, 301.0, null, 2, false, false)]
    [InlineData(JointRuleKind.OneBetween, 300.0, null, 2, false, true)]
    [InlineData(JointRuleKind.OneBetween, 301.0, null, 1, false, true)]
    [InlineData(JointRuleKind.SameBacking, 100.0, 2, 2, false, false)]
    [InlineData(JointRuleKind.SameBacking, 100.0, 2, 3, false, true)]
    [InlineData(JointRuleKind.SameBacking, 90.0, 2, 1, false, true)]
    [InlineData(JointRuleKind.SameBacking, null, 2, 1, false, true)]
    [InlineData(JointRuleKind.SameBacking, null, 2, 2, true, false)]
    [InlineData(JointRuleKind.SameBacking, null, 2, 3, true, true)]
    [InlineData(JointRuleKind.JointsBelow, 301.0, null, 1, true, true)]
    public void WhatARuleForbids(
        JointRuleKind what,
        double? mm,
        int? count,
        int apart,
        bool onTimber,
        bool allowed
    )
    {
        JointPlace Place(double along, double x, string timber) =>
            new(along, 90, along, along, onTimber ? timber : null, onTimber) { XMm = x };
        JointPlace a = Place(1000, 700, "frame 1");
        ImmutableArray<JointRule> rules = [new(what, mm, count, "test")];
        foreach (JointPlace b in new[] { Place(1300, 790, "frame 1"), Place(700, 610, "frame 1") })
        {
            Assert.Equal(allowed, JointRuleCheck.Allows(rules, a, b, apart));
            Assert.Equal(allowed, JointRuleCheck.Allows(rules, b, a, apart));
        }

        Assert.True(
            !onTimber || JointRuleCheck.Allows(rules, a, Place(1000, 700, "frame 2"), apart)
        );
    }
}
