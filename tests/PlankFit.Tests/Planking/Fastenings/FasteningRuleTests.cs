using System.Collections.Immutable;
using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Findings;

namespace PlankFit.Tests.Planking.Fastenings;

/// <summary>What a job leaves out of its fastenings, by hand, and whose wish counts for a layer done otherwise.</summary>
public sealed class FasteningRuleTests
{
    /// <summary>A skin of 9 mm. 6 thicknesses is Whitfield's rule of thumb for nails (read); the rest are the proposals that the rule's own words give.</summary>
    [Fact]
    public void WhatIsLeftOutComesFromTheThickness()
    {
        var rule = FasteningRule.Of(new(), 9, true);
        Assert.Equal(FasteningKind.ScrewAndPad, rule.Kind);
        Assert.Equal(FastenerShape.Screw, rule.Shape);
        Assert.True(rule.IsTemporary);
        Assert.Equal((54, 18), (rule.SpacingMm, rule.NearestMm));
        Assert.Equal((18, 27, 27), (rule.EdgeMm, rule.EndMm, rule.JointMm));
        Assert.Equal((9, 13.5, 8, 27), (rule.BelowMm, rule.MissMm, rule.MarginMm, rule.OpenMm));
        Assert.Equal((9, 3), (rule.PadMm, rule.HoleMm));
        Assert.Null(rule.BiteMm);
        Assert.Null(rule.VentMm);
        Assert.Empty(rule.LengthsMm);
        Assert.Equal(10, FasteningRule.Of(new(), 5, true).MissMm);
    }

    [Fact]
    public void WhatIsGivenIsKept()
    {
        var rule = FasteningRule.Of(
            new()
            {
                SpacingMm = 30,
                NearestMm = 40,
                EndMm = 11,
                OpenMm = 12,
                MissMm = 4,
            },
            9,
            true
        );
        // Two fastenings are asked to be no further apart than they may be near.
        Assert.Equal((30, 30), (rule.SpacingMm, rule.NearestMm));
        Assert.Equal((11, 11, 12, 4), (rule.EndMm, rule.JointMm, rule.OpenMm, rule.MissMm));
    }

    /// <summary>Vents belong to vacuum, and pulling down to skins after the first that something is driven through.</summary>
    [Theory]
    [InlineData(FasteningKind.None, false, 200.0, null, 0.0)]
    [InlineData(FasteningKind.ScrewAndPad, false, null, FasteningKind.ScrewAndPad, 9.0)]
    [InlineData(
        FasteningKind.StapleThroughStrap,
        false,
        null,
        FasteningKind.StapleThroughStrap,
        1.0
    )]
    [InlineData(FasteningKind.LeftIn, false, null, FasteningKind.StapleThroughStrap, 0.0)]
    [InlineData(FasteningKind.ScrewAndPad, true, null, null, 9.0)]
    public void EachKindHasItsOwn(
        FasteningKind kind,
        bool first,
        double? vent,
        FasteningKind? pulledBy,
        double pad
    )
    {
        var rule = FasteningRule.Of(
            new()
            {
                Kind = kind,
                Shape = FastenerShape.Nail,
                VentMm = 200,
            },
            9,
            first
        );
        Assert.Equal(vent, rule.VentMm);
        Assert.Equal(pulledBy, rule.PullDown?.Kind);
        Assert.Equal(pad, rule.PadMm);
        Assert.Equal(
            kind switch
            {
                FasteningKind.ScrewAndPad => FastenerShape.Screw,
                FasteningKind.StapleThroughStrap => FastenerShape.Staple,
                _ => FastenerShape.Nail,
            },
            rule.Shape
        );
        Assert.Equal(
            kind is FasteningKind.ScrewAndPad or FasteningKind.StapleThroughStrap,
            rule.IsTemporary
        );
        if (rule.PullDown is { } down)
        {
            Assert.Equal((75, 50, 18), (down.SpacingMm, down.AcrossMm, down.BlockMm));
            Assert.Equal(pulledBy == FasteningKind.ScrewAndPad ? 9 : 1, down.PadMm);
        }
    }

    /// <summary>A layer of another kind takes over distances, and nothing that belongs to the kind: a staple is no 4 mm screw.</summary>
    [Theory]
    [InlineData(null, true)]
    [InlineData(FasteningKind.LeftIn, true)]
    [InlineData(FasteningKind.StapleThroughStrap, false)]
    public void ALayerOfAnotherKindTakesOverNothingOfTheKind(FasteningKind? own, bool same)
    {
        var usual = new FasteningSettings
        {
            Kind = FasteningKind.LeftIn,
            Shape = FastenerShape.Nail,
            Name = "nail",
            SpacingMm = 75,
            PadMm = 2,
            BiteMm = 20,
            HoleMm = 4,
            LengthsMm = [40],
            VentMm = 200,
        };
        FasteningSettings layer = new FasteningSettings { Kind = own, EdgeMm = 12 }.Over(usual);
        Assert.Equal(own ?? FasteningKind.LeftIn, layer.Kind);
        Assert.Equal((75, 12, 200), (layer.SpacingMm, layer.EdgeMm, layer.VentMm));
        Assert.Equal(same ? FastenerShape.Nail : null, layer.Shape);
        Assert.Equal(same ? "nail" : null, layer.Name);
        Assert.Equal(
            same ? (2.0, 20.0, 4.0) : (null, null, (double?)null),
            (layer.PadMm, layer.BiteMm, layer.HoleMm)
        );
        Assert.Equal(same, layer.LengthsMm is not null);
    }

    /// <summary>A screw leaves one hole, a staple two, a vent one; what is left in leaves none.</summary>
    [Theory]
    [InlineData(FasteningUse.Backing, FasteningKind.ScrewAndPad, 7)]
    [InlineData(FasteningUse.PullDown, FasteningKind.StapleThroughStrap, 14)]
    [InlineData(FasteningUse.Backing, FasteningKind.LeftIn, 0)]
    [InlineData(FasteningUse.Vent, FasteningKind.None, 7)]
    public void HolesAreLeftByWhatIsTakenOut(FasteningUse use, FasteningKind kind, int holes) =>
        Assert.Equal(
            holes,
            new FasteningTotal(
                1,
                Side.Port,
                new(use, kind, FastenerShape.Screw),
                null,
                use == FasteningUse.Vent ? null : 40,
                7,
                8
            ).HolesToFill
        );

    /// <summary>A layer's own wish goes before the usual one, and a timber's own depth before that of all.</summary>
    [Fact]
    public void WhatIsSaidOfOneGoesBeforeWhatIsSaidOfAll()
    {
        var spec = new FasteningSpec(
            new() { SpacingMm = 75 },
            ImmutableDictionary<string, FasteningSettings>.Empty.Add(
                "outer",
                new() { SpacingMm = 100 }
            ),
            45,
            ImmutableDictionary<string, double>.Empty.Add("frame 3", 60),
            FasteningSpec.UsualSparePercent
        );
        Assert.Equal(75, spec.Of("inner").SpacingMm);
        Assert.Equal(100, spec.Of("outer").SpacingMm);
        Assert.Equal((60, 45), (spec.DepthOf("frame 3"), spec.DepthOf("frame 4")));
    }
}
