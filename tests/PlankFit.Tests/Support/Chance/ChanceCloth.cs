using System.Text.RegularExpressions;

namespace PlankFit.Tests.Support.Chance;

/// <summary>Cloths for a job by chance: for each of its cloth layers, and for one more outside all planks, in the job's own units.</summary>
internal static partial class ChanceCloth
{
    public static string Of(int seed, string job)
    {
        var draw = new Draw(seed);
        string[] layers = [.. Layer().Matches(job).Select(m => m.Groups[1].Value), "outside"];
        string text =
            $"\n[[layer]]\nkind = \"cloth\"\nname = \"outside\"\nthickness = {draw.Value(0.6)}\n"
            + $"\n[[cloth]]\nname = \"stitched\"\nkind = \"stitched\"\nmass = {draw.Whole(300, 900)}"
            + $"\nroll = [{{ width = {draw.Value(draw.Between(900, 1300))}, length = {draw.Value(50000)} }}, {{ width = {draw.Value(1300)}, length = {draw.Value(draw.Between(3000, 9000))}, count = 1 }}]\n"
            + $"\n[[cloth]]\nname = \"woven\"\nkind = \"woven\"\nmass = \"6 oz/yd2\""
            + $"\nroll = {{ width = {draw.Value(1000)}, length = {draw.Value(25000)} }}\n";
        foreach (string layer in layers)
        {
            text +=
                $"\n[[sheathing]]\nlayer = \"{layer}\"\ncloth = \"{draw.OneOf("stitched", "woven")}\""
                + $"\nkeel = {draw.OneOf($"{{ past-centre-line = {draw.Value(draw.Between(20, 70))} }}", $"{{ stop = {draw.Value(20)} }}")}"
                + $"\nfirst-along = {draw.OneOf("\"best\"", "\"best\"", "\"keel\"", "\"chine\"", "{ part = 0.4, turned = -2 }")}"
                + $"\ncourses = \"{draw.OneOf("fewest joins", "along", "across", "fewest metres")}\""
                + (draw.Heads() ? $"\nchine = {{ round = {draw.Value(75)} }}" : "")
                + (draw.Heads(0.3) ? $"\ntransom = {{ round = {draw.Value(50)} }}" : "")
                + $"\nside-first = \"{draw.OneOf("port", "starboard")}\"\n";
        }

        return text;
    }

    [GeneratedRegex("kind = \"cloth\"\nname = \"([^\"]+)\"")]
    private static partial Regex Layer();
}
