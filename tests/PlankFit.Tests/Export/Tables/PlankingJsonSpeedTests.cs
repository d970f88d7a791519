using System.Diagnostics;
using PlankFit.Export;
using PlankFit.Planking;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Tables;

public sealed class PlankingJsonSpeedTests(ITestOutputHelper output)
{
    [Fact]
    public void AboutAMillionNumbersTakeAFractionOfASecond()
    {
        BottomPlan plan = PrismaticPlan.Build(new(MaxChordMm: 3.6));
        using MemoryStream stream = new(64 << 20);
        List<double> times = [];
        for (int i = 0; i < 7; i++)
        {
            stream.SetLength(0);
            Stopwatch watch = Stopwatch.StartNew();
            PlankingJson.Write(plan, stream);
            times.Add(watch.Elapsed.TotalMilliseconds);
        }

        int numbers = plan
            .PlankLayers.SelectMany(l => l.Starboard.Concat(l.Port))
            .Sum(p =>
                (5 * p.Outline.Length) + (3 * (p.ForwardEdge.Seam.Length + p.AfterEdge.Seam.Length))
            );
        output.WriteLine(
            $"{numbers} numbers, {stream.Length} bytes; ms: {string.Join(" ", times.Select(t => NumberText.Trimmed(t, 1)))}"
        );
        Assert.True(numbers > 700_000);
        // Ten times what it takes on two quiet cores, so that a busy machine does not fail it and a slow formatter does.
        Assert.True(times.Min() < 800, $"{times.Min()} ms");
    }
}
