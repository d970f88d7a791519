using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Geometry;

namespace PlankFit.Tests.Planking;

/// <summary>Two lines of a table in one place are told with their station, their names and where they are; seed ah4H3I1xvnbf of the odd tables was an exception.</summary>
public sealed class SharedPointTests
{
    [Fact]
    public void AColumnCopiedFromTheNextLine()
    {
        Job job = WithBetween((keel, chine) => keel);
        Finding fault = Assert.Single(Faults(job));
        Assert.Contains("station 3", fault.Where, StringComparison.Ordinal);
        Assert.Contains(
            "'keel edge' and 'between' are in one place",
            fault.Message,
            StringComparison.Ordinal
        );
        Assert.Contains("leave the cells", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ABottomWithoutWidthAtOneStation()
    {
        Job job = LoftTests.Demo("tender");
        OffsetTable table = job.Offsets;
        OffsetLine keel = table.Lines.Single(l => l.Name == job.Hull.Panel.Lower);
        Job narrow = With(
            job,
            table with
            {
                Lines =
                [
                    .. table.Lines.Select(l =>
                        l.Name == job.Hull.Panel.Upper
                            ? l with
                            {
                                HeightsMm = l.HeightsMm.SetItem(3, keel.HeightsMm[3]),
                                HalfBreadthsMm = l.HalfBreadthsMm.SetItem(
                                    3,
                                    keel.HalfBreadthsMm[3]
                                ),
                            }
                            : l
                    ),
                ],
            }
        );
        Finding fault = Assert.Single(Faults(narrow));
        Assert.Contains("are in one place", fault.Message, StringComparison.Ordinal);
        Assert.Contains("has no width there", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ALineBetweenThatIsApartALittleIsPlanned() =>
        Assert.Empty(Faults(WithBetween((keel, chine) => keel + (0.1 * (chine - keel)))));

    private static IEnumerable<Finding> Faults(Job job) =>
        BottomPlanner.Plan(job).Findings.Where(f => f.Severity == Severity.Error);

    /// <summary>The tender with a line half-way between keel and chine, but at station 3 where it is told.</summary>
    private static Job WithBetween(Func<double, double, double> at)
    {
        Job job = LoftTests.Demo("tender");
        OffsetTable table = job.Offsets;
        OffsetLine keel = table.Lines.Single(l => l.Name == job.Hull.Panel.Lower),
            chine = table.Lines.Single(l => l.Name == job.Hull.Panel.Upper);
        ImmutableArray<double?> Between(ImmutableArray<double?> k, ImmutableArray<double?> c) =>
            [
                .. k.Select(
                    (a, i) =>
                        a is { } lower && c[i] is { } upper
                            ? i == 3
                                ? at(lower, upper)
                                : (lower + upper) / 2
                            : (double?)null
                ),
            ];
        var between = new OffsetLine(
            "between",
            [],
            Between(keel.HeightsMm, chine.HeightsMm),
            Between(keel.HalfBreadthsMm, chine.HalfBreadthsMm)
        );
        return With(job, table with { Lines = [keel, between, chine] }, ["between"]);
    }

    private static Job With(Job job, OffsetTable table, ImmutableArray<string>? between = null) =>
        job with
        {
            Planking = job.Planking with
            {
                Offsets = table,
                Hull = between is { } b
                    ? job.Hull with
                    {
                        Panel = job.Hull.Panel with { Between = b },
                    }
                    : job.Hull,
            },
        };
}
