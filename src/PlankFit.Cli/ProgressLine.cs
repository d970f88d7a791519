using System.Diagnostics;
using PlankFit.Planking.Laying;

namespace PlankFit.Cli;

/// <summary>One line that is written over while work goes on, at a terminal only, and no more than ten times a second.</summary>
internal sealed class ProgressLine : IProgress<PlanProgress>, IDisposable
{
    private readonly bool shown = !Console.IsErrorRedirected;
    private readonly Lock gate = new();
    private long last;
    private int width;

    public void Report(PlanProgress value)
    {
        if (!shown)
        {
            return;
        }

        lock (gate)
        {
            if (last != 0 && Stopwatch.GetElapsedTime(last).TotalMilliseconds < 100)
            {
                return;
            }

            last = Stopwatch.GetTimestamp();
            string text = $"{(int)(100 * value.Part), 3} %  {value.Doing}";
            Show("\r" + text.PadRight(width));
            width = text.Length;
        }
    }

    public void Clear()
    {
        lock (gate)
        {
            if (width > 0)
            {
                Show("\r" + new string(' ', width) + "\r");
                width = 0;
            }
        }
    }

    public void Dispose() => Clear();

    private static void Show(string text)
    {
        try
        {
            Console.Error.Write(text);
        }
        catch (LostStreamException) { } // what is lost is progress only; the run's last words tell it
    }
}
