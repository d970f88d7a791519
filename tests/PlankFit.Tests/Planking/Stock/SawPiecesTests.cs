using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Stock;

/// <summary>What is to be sawn for the launch and the tender.</summary>
public sealed class SawPiecesTests
{
    private static readonly BottomPlan Launch = DemoPlans.Of("survey-launch");

    [Fact]
    public void EveryPlankIsAmongThemOnceAsAWholeOrInPieces()
    {
        ImmutableArray<SawPiece> pieces = Of(Launch, NestSpec.Usual);
        Plank[] planks = [.. Launch.PlankLayers.SelectMany(l => l.Starboard.Concat(l.Port))];
        Assert.Equal(pieces.Length, pieces.Select(p => p.Id).Distinct().Count());
        Assert.Equal(
            planks.Select(p => p.Id).Order(),
            pieces.Select(p => p.PlankId).Distinct().Order()
        );
        foreach (Plank plank in planks)
        {
            SawPiece[] of = [.. pieces.Where(p => p.PlankId == plank.Id)];
            Assert.Equal(
                Launch.Joints.On(plank.Id)?.Pieces.Select(p => p.Cut) ?? [plank.FlatCut],
                of.Select(p => p.Outline)
            );
            Assert.All(of, p => Assert.Equal(plank.Kind == PlankKind.Master, p.IsMaster));
            Assert.All(of, p => Assert.Equal(9, p.ThicknessMm));
            Assert.All(of, p => Assert.Equal("douglas-fir", p.Species));
        }
    }

    /// <summary>A bevel sawn on a plank that lies face down leans the wrong way.</summary>
    [Fact]
    public void WhatIsBevelledIsNeverTurnedFaceForFace()
    {
        ImmutableArray<SawPiece> pieces = Of(
            Launch,
            NestSpec.Usual with
            {
                TurnFaceForFace = true,
            }
        );
        foreach (SawPiece piece in pieces)
        {
            bool bevelled = Launch
                .Find(piece.PlankId)!
                .Ends.Any(e => e.BevelAtLeastN != 0 || e.BevelAtGreatestN != 0);
            Assert.Equal(!bevelled, piece.MayTurnFace);
        }

        Assert.Contains(pieces, p => p.MayTurnFace);
        Assert.Contains(pieces, p => !p.MayTurnFace);
        Assert.All(Of(Launch, NestSpec.Usual), p => Assert.False(p.MayTurnFace));
    }

    [Fact]
    public void TwinsNameEachOther()
    {
        ImmutableArray<SawPiece> pieces = Of(Launch, NestSpec.Usual with { PairsTogether = true });
        var byId = pieces.ToDictionary(p => p.Id);
        Assert.All(
            pieces,
            p =>
            {
                SawPiece twin = byId[p.Twin!.Value];
                Assert.Equal(p.Id, twin.Twin);
                Assert.Equal(p.Id with { Plank = p.PlankId with { Side = twin.Side } }, twin.Id);
                Assert.NotEqual(p.Side, twin.Side);
            }
        );
    }

    [Fact]
    public void MastersAndLayersAskForTheirGrades()
    {
        NestSpec spec = NestSpec.Usual with
        {
            Grades = ["clear", "sound", "knotty"],
            MasterGrade = "sound",
            LeastGrades = ImmutableDictionary<string, string>.Empty.Add("outer", "clear"),
        };
        Assert.All(
            Of(Launch, spec),
            p =>
                Assert.Equal(
                    p.Layer == 2 ? "clear"
                        : p.IsMaster ? "sound"
                        : null,
                    p.LeastGrade
                )
        );
    }

    /// <summary>What is on the hull, or sawn, is not sawn again.</summary>
    [Fact]
    public void WhatIsFittedIsLeftOut()
    {
        Plank first = Launch.PlankLayers.First().Starboard[3];
        ImmutableArray<LayerPlan> layers =
        [
            .. Launch.Layers.Select(l =>
                l is PlankLayerPlan p
                    ? p with
                    {
                        Starboard =
                        [
                            .. p.Starboard.Select(s =>
                                s.Id == first.Id ? s with { IsFitted = true } : s
                            ),
                        ],
                    }
                    : l
            ),
        ];
        ImmutableArray<SawPiece> pieces = Of(Launch with { Layers = layers }, NestSpec.Usual);
        Assert.DoesNotContain(pieces, p => p.PlankId == first.Id);
        Assert.Contains(pieces, p => p.PlankId == first.Id with { Side = Side.Port });
    }

    private static ImmutableArray<SawPiece> Of(BottomPlan plan, NestSpec spec) =>
        (plan with { Job = plan.Job with { Nest = spec } }).PiecesToSaw();
}
