using PlankFit.Planking.Hulls;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Reading.Jobs;

/// <summary>The demo hulls read without a word said, and as the tests' own plain reader of their tables has them.</summary>
public class DemoJobTests
{
    public static TheoryData<string> Hulls => [.. DemoTables.All.Select(d => d.Hull)];

    [Theory]
    [MemberData(nameof(Hulls))]
    public void ADemoHull(string hull)
    {
        ReadResult result = JobReader.Read(Path.Combine(DemoTables.Folder(hull), "job.toml"));
        Assert.Empty(result.Findings);
        OffsetTable read = result.Job!.Offsets,
            plain = DemoTables.Read(hull);
        Assert.Equal(plain.Stations.Select(s => s.Name), read.Stations.Select(s => s.Name));
        Same(
            plain.Stations.Select(s => (double?)s.PositionMm),
            read.Stations.Select(s => (double?)s.PositionMm)
        );
        Assert.Equal(plain.Lines.Select(l => l.Name), read.Lines.Select(l => l.Name));
        foreach ((OffsetLine a, OffsetLine b) in plain.Lines.Zip(read.Lines))
        {
            Same(a.HeightsMm, b.HeightsMm);
            Same(a.HalfBreadthsMm, b.HalfBreadthsMm);
            Same(
                a.PositionsMm.IsDefaultOrEmpty
                    ? b.PositionsMm.Select(_ => (double?)null)
                    : a.PositionsMm,
                b.PositionsMm
            );
        }
    }

    private static void Same(IEnumerable<double?> plain, IEnumerable<double?> read)
    {
        Assert.Equal(plain.Count(), read.Count());
        Assert.All(
            plain.Zip(read),
            pair =>
            {
                Assert.Equal(pair.First.HasValue, pair.Second.HasValue);
                Assert.Equal(pair.First ?? 0, pair.Second ?? 0, 1e-9);
            }
        );
    }
}
