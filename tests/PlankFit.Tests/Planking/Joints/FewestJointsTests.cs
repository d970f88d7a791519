using System.Collections.Immutable;
using CsCheck;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Joints;

/// <summary>The number of joints is the fewest there can be: against a general solver on the same places, of rows by chance and of the demo hulls.</summary>
public sealed class FewestJointsTests
{
    private static bool Long => Environment.GetEnvironmentVariable("PLANKFIT_LONG") == "1";

    [Fact]
    public void RowsByChanceHaveTheFewestJointsThatASolverFinds()
    {
        // Where long runs are asked for or faults are planted, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        int rows = 0,
            more = 0,
            none = 0,
            unproved = 0;
        ChanceRow
            .Gen(Long ? 8 : 4)
            .Sample(
                row =>
                {
                    rows++;
                    FewestChoice choice = FewestJoints.Of(
                        row.Planks,
                        row.Stock,
                        row.Rules,
                        stop: TestContext.Current.CancellationToken
                    );
                    int? fewest = SolverJoints.Fewest(row.Planks, row.Stock, row.Rules);
                    if (!choice.IsProved)
                    {
                        // Its effort ran out: what it says is proved is true, and with more of it the fewest are found.
                        unproved++;
                        Assert.True(fewest is null || choice.LeastJoints <= fewest);
                        Assert.True(choice.Ways.IsEmpty || fewest <= choice.Joints);
                        choice = FewestJoints.Of(
                            row.Planks,
                            row.Stock,
                            row.Rules,
                            10 * FewestJoints.UsualEffort,
                            TestContext.Current.CancellationToken
                        );
                        Assert.True(choice.IsProved);
                    }

                    Assert.Equal(fewest is null, choice.Stuck is not null);
                    if (fewest is not { } joints)
                    {
                        none++;
                        Assert.Empty(choice.Ways);
                        return;
                    }

                    Assert.Equal(joints, choice.Joints);
                    Assert.Equal(joints, choice.LeastJoints);
                    Kept(row, choice.Ways);
                    more +=
                        joints
                        > row.Planks.Where(p => p.IsDivided)
                            .Sum(p => PlankSchemes.LeastJoints(p, row.Stock))
                            ? 1
                            : 0;
                },
                iter: Long ? 300 : 40,
                threads: 1,
                seed: "0000KzqXv3Y5"
            );
        // Of 10,000 draws none was left unproved.
        Shares.AtLeast(0.999, rows - unproved, rows);
        Assert.True(none > 0, $"{none} rows without a way");
        Assert.True(!Long || more > 20, $"{more} rows that need more than each plank by itself");
    }

    /// <summary>Draws of chance whose fewest joints were not proved as long as the search began at one end of the row only.</summary>
    [Theory]
    [InlineData(8, "0000002aVvdrn1", 18)]
    [InlineData(8, "0000000IHN-JC", 19)]
    [InlineData(8, "0000003WbQ0_g2", 19)]
    [InlineData(24, "0000000nJdrgc", 50)]
    [InlineData(24, "0000000PwlPEq", 36)]
    [InlineData(24, "0000001ONP1mX", 49)]
    public void WhatOneEndOfARowMakesHardIsProvedFromTheOther(int most, string seed, int joints) =>
        ChanceRow
            .Gen(most)
            .Sample(
                row =>
                {
                    FewestChoice choice = FewestJoints.Of(row.Planks, row.Stock, row.Rules);
                    Assert.Equal(joints, choice.LeastJoints);
                    Assert.Equal(joints, choice.Joints);
                    Kept(row, choice.Ways);
                    FewestChoice fromTheOther = FewestJoints.Of(
                        [.. row.Planks.Reverse()],
                        row.Stock,
                        row.Rules
                    );
                    Assert.Equal(joints, fromTheOther.Joints);
                    Assert.Equal(joints, fromTheOther.LeastJoints);
                },
                iter: 1,
                threads: 1,
                seed: seed
            );

    /// <summary>A row without a way, which from its first plank is hard to tell: the plank that is named is the first all the same.</summary>
    [Fact]
    public void AHardRowWithoutAWayNamesTheFirstPlankThatFindsNoPlace()
    {
        // Where more is asked for than by default, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        ChanceRow
            .Gen(24)
            .Sample(
                row =>
                {
                    FewestChoice choice = FewestJoints.Of(row.Planks, row.Stock, row.Rules);
                    int stuck = choice.Stuck ?? -1;
                    Assert.InRange(stuck, 1, row.Planks.Length - 1);
                    Assert.NotEmpty(
                        FewestJoints.Of(row.Planks[..stuck], row.Stock, row.Rules).Ways
                    );
                },
                iter: 1,
                threads: 1,
                seed: "0000000-34hCw"
            );
    }

    /// <summary>The plank said to have no place is the first: those before it have a way, by the solver.</summary>
    [Fact]
    public void TheFirstPlankWithoutAPlaceIsTheSolvers() =>
        ChanceRow
            .Gen(5)
            .Where(row => FewestJoints.Of(row.Planks, row.Stock, row.Rules).Stuck is > 0)
            .Sample(
                row =>
                {
                    int stuck = FewestJoints.Of(row.Planks, row.Stock, row.Rules).Stuck!.Value;
                    Assert.Null(
                        SolverJoints.Fewest(row.Planks[..(stuck + 1)], row.Stock, row.Rules)
                    );
                    Assert.NotNull(SolverJoints.Fewest(row.Planks[..stuck], row.Stock, row.Rules));
                },
                iter: Long ? 100 : 40,
                threads: 1,
                seed: "0000KzqXv3Y5"
            );

    /// <summary>With hardly any effort the bound still holds, and never is more proved than is true.</summary>
    [Fact]
    public void ASearchCutShortProvesNothingFalse() =>
        ChanceRow
            .Gen(24)
            .Sample(
                row =>
                {
                    FewestChoice all = FewestJoints.Of(row.Planks, row.Stock, row.Rules);
                    foreach (long effort in new long[] { 1, 40, 400, 4000 })
                    {
                        FewestChoice cut = FewestJoints.Of(
                            row.Planks,
                            row.Stock,
                            row.Rules,
                            effort
                        );
                        if (cut.Stuck is not null || all.Stuck is not null)
                        {
                            Assert.True(all.Stuck is not null && cut.Ways.IsEmpty);
                            continue;
                        }

                        // Neither a way nor a proof that there is none: then there is nothing to hold the bound against.
                        if (all.Ways.IsEmpty)
                        {
                            continue;
                        }

                        Assert.InRange(cut.LeastJoints, 0, all.Joints);
                        if (!cut.Ways.IsEmpty)
                        {
                            Assert.True(cut.Joints >= all.LeastJoints);
                            Kept(row, cut.Ways);
                        }
                    }
                },
                iter: Long ? 2000 : 40,
                threads: 1
            );

    public static TheoryData<string, int, int, int, int> Hulls
    {
        get
        {
            var hulls = new TheoryData<string, int, int, int, int>
            {
                { "tender", 50, 700, 150, 0 },
            };
            if (Long)
            {
                hulls.Add("pilot-skiff", 50, 1000, 200, 0);
                hulls.Add("survey-launch", 50, 1600, 200, 0);
                hulls.Add("survey-launch", 50, 1600, 200, 2);
                hulls.Add("survey-launch", 50, 1120, 100, 2);
                hulls.Add("pilot-skiff", 50, 700, 100, 2);
                hulls.Add("pilot-skiff", 25, 1000, 150, 1);
            }

            return hulls;
        }
    }

    /// <summary>Scarfs by steps of a grid, on whole bottoms: the solver has the same places, found here from the planks' own shapes, and none with a piece fewer.</summary>
    [Theory]
    [MemberData(nameof(Hulls))]
    public void LayersOfTheDemoHullsHaveTheFewestPieces(
        string hull,
        int grid,
        int longest,
        int next,
        int between
    )
    {
        JointStock stock = new(
            longest,
            longest / 4,
            JointKind.Scarf,
            8,
            new(ButtCut.Square, [], null, 15),
            grid,
            []
        );
        BottomPlan plan = WholeBottomTests.Planned(
            DemoPlans.Of(hull).Job with
            {
                Fastenings = null,
                Timber = null,
                Joints = new(
                    stock,
                    ImmutableDictionary<string, JointStock>.Empty,
                    [
                        new(JointRuleKind.NextPlank, next, null, "test"),
                        new(JointRuleKind.OneBetween, next / 2, null, "test"),
                        new(JointRuleKind.SameBacking, 100, between, "test"),
                        new(JointRuleKind.JointsBelow, 0, null, "test"),
                        new(JointRuleKind.SeamsBelow, 0, null, "test"),
                    ]
                ),
            }
        );
        JointLaws.Hold(plan);
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            JointedLayer? pieced = plan.Joints.Of(layer.Number, Side.Starboard);
            ImmutableArray<JointRule> rules = plan.Job.Joints!.RulesFor(
                stock,
                layer.Planks,
                plan.PlankLayers.Count()
            );
            ImmutableArray<PlankRoom> rooms = ScarfRooms.Of(layer, stock);
            if (pieced is null)
            {
                Assert.Null(SolverJoints.Fewest(rooms, stock, rules));
                continue;
            }

            Assert.Equal(pieced.LeastPieces, pieced.Pieces);
            Assert.False(
                SolverJoints.CanHave(rooms, stock, rules, pieced.Pieces - pieced.Planks.Length - 1)
            );
        }
    }

    /// <summary>The lengths and the rules, asked of the ways by the solver's own rule and by hand.</summary>
    private static void Kept(ChanceRow row, ImmutableArray<JointScheme> ways)
    {
        Assert.Equal(row.Planks.Length, ways.Length);
        for (int i = 0; i < ways.Length; i++)
        {
            double start = row.Planks[i].FromMm;
            foreach (JointPlace place in ways[i].Joints)
            {
                Assert.Contains(place, row.Planks[i].Places);
                Assert.InRange(
                    place.FarMm - start,
                    row.Stock.ShortestMm - 1e-6,
                    row.Stock.LongestMm + 1e-6
                );
                start = place.NearMm;
                for (int j = 0; j < i; j++)
                {
                    Assert.DoesNotContain(
                        ways[j].Joints,
                        other => SolverJoints.Forbidden(row.Rules, other, place, i - j)
                    );
                }
            }

            Assert.Equal(row.Planks[i].IsDivided, !ways[i].Joints.IsEmpty);
            if (row.Planks[i].IsDivided)
            {
                Assert.InRange(
                    row.Planks[i].ToMm - start,
                    row.Stock.ShortestMm - 1e-6,
                    row.Stock.LongestMm + 1e-6
                );
            }
        }
    }
}
