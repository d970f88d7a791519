namespace PlankFit.Planking.Findings;

/// <summary>Names of many planks in few words.</summary>
public static class PlankRuns
{
    /// <summary>Fewer than this are named one by one.</summary>
    private const int Least = 3;

    /// <summary>"S1-03 to S1-19, S1-22, P1-04": planks that follow one another by the first and the last of them, in the order in which they are given.</summary>
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
            runs.Select(run =>
                run.Count < Least ? string.Join(", ", run) : $"{run[0]} to {run[^1]}"
            )
        );
    }
}
