using System.CommandLine;
using PlankFit.Mutants;

// dotnet run -c Release --project tests/PlankFit.Mutants [-- --some 20]
var some = new Option<int?>("--some")
{
    Description = "Look at so many of them only, spread evenly over the list.",
};
var only = new Option<string?>("--only")
{
    Description = "Look at those only whose area or file has this in it.",
};
var copy = new Option<string?>("--copy")
{
    Description = "Make the planted copy in this folder, outside the checkout, and leave it there.",
};
var places = new Option<bool>("--places")
{
    Description = "Look only whether each of them still has its place in the sources.",
};
var killers = new Option<bool>("--killers")
{
    Description = "Tell of each mutant which test sees it.",
};
var root = new RootCommand(
    "Plants the faults of mutants.txt in a copy of the sources, one at a time, and says which of them the tests see."
)
{
    some,
    only,
    copy,
    places,
    killers,
};
root.SetAction(
    async (parsed, stop) =>
    {
        string checkout = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(checkout, "PlankFit.sln")))
        {
            checkout =
                Path.GetDirectoryName(checkout)
                ?? throw new InvalidOperationException("the mutants run outside the checkout");
        }

        try
        {
            return await new MutationRun(
                checkout,
                parsed.GetValue(some),
                parsed.GetValue(only),
                parsed.GetValue(copy),
                parsed.GetValue(places),
                parsed.GetValue(killers)
            ).Go(stop);
        }
        catch (InvalidDataException e)
        {
            Console.WriteLine(e.Message);
            return 2;
        }
    }
);
return await root.Parse(args).InvokeAsync();
