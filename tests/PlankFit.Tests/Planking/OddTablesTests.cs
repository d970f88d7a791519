using System.Diagnostics;
using CsCheck;
using PlankFit.Planking;

namespace PlankFit.Tests.Planking;

/// <summary>Whatever the table holds, planning ends soon, in a plan of finite numbers or in words; never in an exception.</summary>
public sealed class OddTablesTests
{
    /// <summary>
    /// A plan that loops is caught by it. The worst met in some 25,000 odd tables took 5 s on a quiet machine, over a surface folded every metre, and three
    /// times that on a busy one; a real bottom takes a twentieth of a second.
    /// </summary>
    private static readonly TimeSpan Long = TimeSpan.FromSeconds(60);

    [Fact]
    public void OddTablesEndInAPlanOrInWords()
    {
        int refused = 0;
        OddTables.Gen.Sample(
            job =>
            {
                var clock = Stopwatch.StartNew();
                PlanResult result = BottomPlanner.Plan(job);
                Assert.True(clock.Elapsed < Long, $"took {clock.Elapsed.TotalSeconds:0.0} s");
                if (result.Plan is not null)
                {
                    Assert.All(
                        result.Plan.PlankLayers.SelectMany(l => l.Starboard),
                        p =>
                            Assert.All(
                                p.FlatCut,
                                v => Assert.True(double.IsFinite(v.X) && double.IsFinite(v.Y), p.Id)
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
            iter: 600,
            threads: 2,
            print: j =>
                $"{j.Layers[0]}\n{j.Layers.Length} layers, {j.Hull}\n{string.Join("\n", j.Offsets.Stations)}\n{string.Join("\n", j.Offsets.Lines.Select(l => l.Name + " z " + string.Join(" ", l.HeightsMm) + " y " + string.Join(" ", l.HalfBreadthsMm)))}"
        );
        Assert.True(refused > 0);
    }
}
