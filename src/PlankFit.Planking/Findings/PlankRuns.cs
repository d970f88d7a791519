namespace PlankFit.Planking.Findings;

/// <summary>Names of many planks in few words: "S1-03, S1-08 to 14".</summary>
public static class PlankRuns
{
    /// <summary>Fewer than this are named one by one.</summary>
    private const int Least = 3;

    /// <summary>S1-08 to 14; S1-08.</summary>
    public static string Run(PlankId first, PlankId last) =>
        first == last ? first.ToString() : $"{first} to {last.Padded}";

    /// <summary>In order of their names.</summary>
    public static string Of(IEnumerable<PlankId> planks) => Words(planks.Order());

    /// <summary>Planks that follow one another by the first and the last of them, in the order in which they are given.</summary>
    public static string Words(IEnumerable<PlankId> planks)
    {
        List<List<PlankId>> runs = [];
        foreach (PlankId plank in planks)
        {
            if (
                runs.Count > 0
                && runs[^1][^1] is var last
                && last with { Number = last.Number + 1 } == plank
            )
            {
                runs[^1].Add(plank);
            }
            else
            {
                runs.Add([plank]);
            }
        }

        return string.Join(
            ", ",
            runs.Select(run => run.Count < Least ? string.Join(", ", run) : Run(run[0], run[^1]))
        );
    }
}
