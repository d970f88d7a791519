using System.CommandLine;
using System.Globalization;
using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.Hosting;
using PlankFit.Pages.Serving;
using PlankFit.Pages.Shelf;

var job = new Argument<string?>("JOB")
{
    Description =
        "The job file, such as hulls/survey-launch/job.toml; where none is named, or a folder, those of that folder are offered.",
    Arity = ArgumentArity.ZeroOrOne,
};
var port = new Option<int>("--port")
{
    Description =
        "Where to serve; where left out, the same every time for a job, or any that is free where another has that.",
    DefaultValueFactory = _ => 0,
    HelpName = "NUMBER",
};
var closed = new Option<bool>("--no-browser")
{
    Description = "Only print the address, and open nothing.",
};
var onNetwork = new Option<bool>("--on-network")
{
    Description =
        "Serve the shop's own network as well, for a phone beside the hull: a code is shown here that lets one browser in.",
};
var root = new RootCommand(
    "A page in the browser on which a bottom is looked at and changed; served to this computer alone, unless asked."
);
root.Add(job);
root.Add(port);
root.Add(closed);
root.Add(onNetwork);
root.SetAction(
    async (parsed, stop) =>
    {
        JobShelf shelf;
        try
        {
            shelf = JobShelf.Of(parsed.GetValue(job), Environment.CurrentDirectory);
        }
        catch (Exception e) when (e is FileNotFoundException or InvalidDataException)
        {
            await Console.Error.WriteLineAsync($"plankfit-page: {e.Message}");
            return 1;
        }

        IPAddress? network = parsed.GetValue(onNetwork) ? ShopNetwork.Address() : null;
        if (parsed.GetValue(onNetwork) && network is null)
        {
            await Console.Error.WriteLineAsync(
                "plankfit-page: this computer is on no network: join it first, or leave --on-network out."
            );
            return 1;
        }

        string place = shelf is { Paths: [var only], NewOnesGoTo: null }
            ? only
            : Path.GetFullPath(parsed.GetValue(job) ?? "", Environment.CurrentDirectory);
        int asked = parsed.GetValue(port),
            usual = UsualPort.Of(place);
        bool isTaken = asked == 0 && !UsualPort.IsFree(usual, network);
        WebApplication? served = null;
        await using WebApplication app = PageServer.Build(
            shelf,
            asked != 0 ? asked
                : isTaken ? 0
                : usual,
            network,
            code =>
            {
                string at = PageServer.Address(served!, network: true);
                Console.WriteLine(
                    code is null ? ShopNetwork.Shut(at) : ShopNetwork.Shown(at, code)
                );
            }
        );
        served = app;
        try
        {
            await app.StartAsync(stop);
        }
        catch (IOException e)
        {
            await Console.Error.WriteLineAsync(
                $"plankfit-page: {e.Message} Name another with --port, or none."
            );
            return 1;
        }

        string address = PageServer.Address(app);
        Console.WriteLine(address);
        Console.WriteLine("Open that address in a browser on this computer. Ctrl-C ends it.");
        if (isTaken)
        {
            Console.WriteLine(
                $"Another program has port {usual.ToString(CultureInfo.InvariantCulture)}, where this is served otherwise: what a browser noted there and could not send, it sends when it is served there again."
            );
        }

        if (!parsed.GetValue(closed))
        {
            Desktop.Open(address);
        }

        await app.WaitForShutdownAsync(stop);
        return 0;
    }
);
return await root.Parse(args).InvokeAsync();
