using CsCheck;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking;

/// <summary>
/// Whatever the table holds, planning ends, in a plan of finite numbers or in words; never in an exception. That it ends is not left to a clock: every loop that
/// could run on has a count of its own (steps of a geodesic, seams of a family, aims at a point), past which it says so in a finding.
/// </summary>
public sealed class OddTablesTests
{
    [Fact]
    public void OddTablesEndInAPlanOrInWords()
    {
        int refused = 0,
            draws = LongRuns.Of(200, 5000);
        OddTables.Gen.Sample(
            job =>
            {
                PlanResult result = BottomPlanner.Plan(job);
                if (result.Plan is not null)
                {
                    Assert.All(
                        result.Plan.PlankLayers.SelectMany(l => l.Starboard),
                        p =>
                            Assert.All(
                                p.FlatCut,
                                v =>
                                    Assert.True(
                                        double.IsFinite(v.X) && double.IsFinite(v.Y),
                                        p.Id.ToString()
                                    )
                            )
                    );
                    return;
                }

                Interlocked.Increment(ref refused);
                Assert.Contains(
                    result.Findings,
                    f => f.Severity == Severity.Error && f.Message.Length > 20
                );
                Assert.DoesNotContain(
                    result.Findings,
                    f => f.Message.Contains("NaN", StringComparison.Ordinal)
                );
            },
            iter: draws,
            threads: 2,
            print: j =>
                $"{j.Layers[0]}\n{j.Layers.Length} layers, {j.Hull}\n{string.Join("\n", j.Offsets.Stations)}\n{string.Join("\n", j.Offsets.Lines.Select(l => l.Name + " z " + string.Join(" ", l.HeightsMm) + " y " + string.Join(" ", l.HalfBreadthsMm)))}"
        );
        Shares.AtLeast(0.5, refused, draws);
    }
}
