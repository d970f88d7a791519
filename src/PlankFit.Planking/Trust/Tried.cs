using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;

namespace PlankFit.Planking.Trust;

/// <summary>What can be followed on the table's hull cannot always be on one a little off: then there is no number, and its plank is fitted in place.</summary>
internal static class Tried
{
    public static T? Or<T>(Func<T?> work)
        where T : class
    {
        try
        {
            return work();
        }
        catch (Exception e) when (e is JobFaultException || LostPlace.Is(e))
        {
            return null;
        }
    }
}
