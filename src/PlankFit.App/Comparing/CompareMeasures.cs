using System.Collections.Immutable;
using PlankFit.Export.Comparing;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Text;

namespace PlankFit.App.Comparing;

/// <summary>By what lay-outs are held against each other, and what their chart shows.</summary>
internal sealed record CompareMeasures(ImmutableArray<Measure> By, (Measure Along, Measure Up) Axes)
{
    public static (CompareMeasures? Measures, ImmutableArray<Finding> Findings) Of(
        CompareAsked asked,
        Job job
    )
    {
        List<Finding> findings = [];
        bool boards = asked.BoardRounds is not null && job.Nest is not null;
        if (asked.BoardRounds is < 1)
        {
            findings.Add(
                new(
                    Severity.Error,
                    $"{asked.Mark}boards {asked.BoardRounds}",
                    "a search for a plan of cutting has one round at the least; leave it out where no boards are to be counted"
                )
            );
        }
        else if (asked.BoardRounds is not null && job.Nest is null)
        {
            findings.Add(
                new(
                    Severity.Error,
                    asked.Mark + "boards",
                    "the job names no stock: add [nest] with stock = \"stock.csv\", the boards on hand, or buy = \"yard.csv\", what may be bought"
                )
            );
        }

        ImmutableArray<Measure> Named(string? written, string option) =>
            [
                .. (written ?? "")
                    .Split(
                        ',',
                        StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries
                    )
                    .Select(n => Find(n, option, boards, findings))
                    .OfType<Measure>(),
            ];
        ImmutableArray<Measure> by = Named(asked.By, asked.Mark + "by"),
            axes = Named(asked.Chart, asked.Mark + "chart");
        if (asked.Chart is not null && axes.Length != 2 && findings.Count == 0)
        {
            findings.Add(
                new(
                    Severity.Error,
                    $"{asked.Mark}chart {asked.Chart}",
                    "names two things, what stands along the chart and what up it: planks,waste"
                )
            );
        }

        if (axes.Length == 2 && axes[0] == axes[1])
        {
            findings.Add(
                new(
                    Severity.Error,
                    $"{asked.Mark}chart {asked.Chart}",
                    "names one thing twice: what stands along the chart and what up it are two"
                )
            );
        }

        return findings.Count > 0
            ? (null, [.. findings])
            : (
                new(
                    by.IsEmpty
                        ?
                        [
                            .. Measure.All.Where(m =>
                                m != Measure.Stock && (boards || m != Measure.Boards)
                            ),
                        ]
                        : [.. by.Distinct()],
                    axes.Length == 2 ? (axes[0], axes[1]) : (Measure.Planks, Measure.Waste)
                ),
                []
            );
    }

    private static Measure? Find(string name, string option, bool boards, List<Finding> findings)
    {
        var found = Measure.Find(name);
        string known = string.Join(", ", Measure.All.Select(m => m.Name));
        if (found is null)
        {
            string? near = NearestName.Of(name, [.. Measure.All.Select(m => m.Name)]);
            findings.Add(
                new(
                    Severity.Error,
                    $"{option} {name}",
                    (near is null ? "" : $"did you mean \"{near}\"? ") + $"accepted: {known}"
                )
            );
        }
        else if (found == Measure.Boards && !boards)
        {
            findings.Add(
                new(
                    Severity.Error,
                    $"{option} {name}",
                    "boards are counted only where rounds of a plan of cutting are asked for as well (--boards)"
                )
            );
        }

        return found;
    }
}
