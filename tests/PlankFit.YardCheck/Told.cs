namespace PlankFit.YardCheck;

/// <summary>What was held, and whether it held.</summary>
internal sealed class Told
{
    private int passed;
    private int failed;
    private int skipped;

    /// <param name="wrong">What is wrong; nothing where it holds.</param>
    public void That(string what, IEnumerable<string> wrong)
    {
        string[] found = [.. wrong];
        if (found.Length == 0)
        {
            passed++;
            Console.WriteLine($"ok      {what}");
            return;
        }

        failed++;
        Console.WriteLine($"FAILED  {what}");
        foreach (string one in found.Take(20))
        {
            Console.WriteLine($"        {one}");
        }
    }

    public void That(string what, bool holds, string otherwise = "it is not so") =>
        That(what, holds ? [] : [otherwise]);

    public void Skipped(string what, string why)
    {
        skipped++;
        Console.WriteLine($"SKIPPED {what}: {why}");
    }

    /// <summary>What the program ends with: 0 where nothing failed.</summary>
    public int End()
    {
        Console.WriteLine($"yard: {passed} passed, {failed} failed, {skipped} skipped");
        return failed == 0 && passed > 0 ? 0 : 1;
    }
}
