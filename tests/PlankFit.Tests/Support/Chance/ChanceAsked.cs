using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;

namespace PlankFit.Tests.Support.Chance;

/// <summary>
/// Plans of jobs by chance in which everything is asked for that has a sheet: a job of <see cref="ChanceJob"/>, or of topsides, and what that leaves out, above all
/// things on one side only.
/// </summary>
internal static class ChanceAsked
{
    /// <summary>Null for a job that cannot be planned: what that says is held elsewhere.</summary>
    /// <param name="oneSided">Whether things on one side only are asked for besides what the job has.</param>
    public static BottomPlan? Plan(int seed, bool oneSided = true)
    {
        using var temp = new TempFolder();
        string path;
        if (seed % 5 == 4)
        {
            (string job, string offsets) = ChanceTopside.Of(seed);
            path = temp.File("job.toml");
            File.WriteAllText(path, job);
            File.WriteAllText(temp.File("offsets.csv"), offsets);
        }
        else
        {
            path = ChanceJob.Write(seed, temp.File("job"));
            File.AppendAllText(path, oneSided ? OneSided(seed) : "");
            if (oneSided && seed % 2 == 0)
            {
                File.AppendAllText(path, ChanceCloth.Of(seed, File.ReadAllText(path)));
            }
        }

        return JobReader.Read(path) is { Job: { } read }
            ? BottomPlanner
                .Plan(
                    (seed % 3 == 1 ? ChanceGlue.Added(read, seed) : read) with
                    {
                        Nest = null,
                    },
                    null,
                    CancellationToken.None
                )
                .Plan
            : null;
    }

    /// <summary>A place to starboard alone, a stringer to port alone and a floor to starboard alone, each in some of the jobs.</summary>
    private static string OneSided(int seed)
    {
        var draw = new Draw(seed);
        var hull = new ChanceHull(new Draw(seed));
        string text = "";
        if (draw.Heads(0.7))
        {
            text +=
                $"\n[[behind]]\nname = \"sea cock\"\nkind = \"{draw.OneOf("open", "solid")}\"\nside = \"starboard\""
                + $"\nfrom-keel = {draw.Value(hull.BeamMm * draw.Between(0.3, 0.7))}\nposition = {draw.Value(hull.LengthMm * draw.Between(0.4, 0.8))}"
                + $"\nwidth = {draw.Value(80)}\nlength = {draw.Value(90)}\n";
        }

        if (draw.Heads(0.5))
        {
            text +=
                $"\n[[behind]]\nname = \"engine bearer\"\nkind = \"stringer\"\nside = \"port\""
                + $"\nfrom-keel = {draw.Value(hull.BeamMm * draw.Between(0.25, 0.45))}\nwidth = {draw.Value(50)}"
                + $"\nfrom = {draw.Value(hull.LengthMm * 0.5)}\nto = {draw.Value(hull.LengthMm * 0.85)}\n";
        }

        if (draw.Heads(0.5))
        {
            text +=
                $"\n[[behind]]\nname = \"tank floor\"\nkind = \"floor\"\nside = \"starboard\""
                + $"\nposition = {draw.Value(hull.LengthMm * draw.Between(0.55, 0.75))}\nwidth = {draw.Value(40)}\n";
        }

        return text;
    }
}
